using Triage.Notes.Kinds;
using Triage.Workshop.Steps;

namespace Triage.Workshop.Tests.Keeping;

/// <summary>A bench in use: steps of all kinds, some of which are refused, from a seed.</summary>
internal sealed class RandomSteps(LiveBench live, int seed)
{
    private readonly Random random = new(seed);

    public void Take(int count)
    {
        for (var n = 0; n < count; n++)
            Step(random.Next(14));
    }

    /// <summary>A picture as small as one can be; its check sums are not looked at here.</summary>
    public static byte[] Photo(int number) =>
        [0x89, .. "PNG\r\n"u8, 0x1A, (byte)'\n', .. Chunk("IHDR", new byte[13]), .. Chunk("IDAT", BitConverter.GetBytes(number)), .. Chunk("IEND", [])];

    private void Step(int kind)
    {
        var (steps, job) = (live.Steps, Some(live.Current.Notes.Jobs.Where(j => j.IsOpen).OrderBy(j => j.Id, StringComparer.Ordinal).ToList()));
        switch (kind)
        {
            case 0 or 1:
                steps.TakeIn(new() { Machine = "Pellwick S-40", Complaint = $"no sound, nothing on the display ({random.Next()})" });
                break;
            case 2:
                steps.Line(job.Id, $"R{random.Next(99)} reads {random.Next(900)} ohms");
                break;
            case 3:
                steps.Line(job.Id, "as found", Photo(random.Next()));
                break;
            case 4:
                steps.TakenOff(job.Id, "four screws", "tray", note: null, Photo(random.Next(5)));
                break;
            case 5:
                steps.Undo(job.Id, random.Next(job.Log.Length + 1));
                break;
            case 6:
                steps.WaitFor(job.Id, random.Next(2) == 0 ? null : new("part", null));
                break;
            case 7:
                steps.Agree(job.Id, new() { SpendingLimit = random.Next(80), MayErase = true });
                break;
            case 8:
                steps.Close(job.Id, new() { Outcome = JobOutcome.Mended, Causes = [new(Some(Faults).Id, Grade.Measured)], Lesson = "Look there first." });
                break;
            case 9:
                steps.FollowUp(Some(live.Current.Notes.Jobs.ToList()).Id, random.Next(4) == 0);
                break;
            case 10:
                live.Drawer.Add(new(Some(live.Current.Notes.Of<PartClass>().OrderBy(p => p.Id, StringComparer.Ordinal).ToList()).Id, 1 + random.Next(9)));
                break;
            case 11:
                live.Drawer.Take(job.Id, live.Current.Settings.Drawer.Select(i => i.Key).FirstOrDefault(""));
                break;
            case 12:
                live.Texts.Save(job.Id, live.Texts.Read(job.Id)!.Version, live.Texts.Read(job.Id)!.Text + $"Said by telephone: {random.Next()}.\n");
                break;
            default:
                if (live.History.Of(job.Id) is { Versions.IsEmpty: false } past)
                    live.History.BringBack(job.Id, past.Versions[random.Next(past.Versions.Length)].Version, past.Now);
                break;
        }
    }

    private List<Fault> Faults => [.. live.Current.Notes.Of<Fault>().OrderBy(f => f.Id, StringComparer.Ordinal)];

    private T Some<T>(List<T> among) => among[random.Next(among.Count)];

    private static byte[] Chunk(string kind, byte[] content) => [0, 0, 0, (byte)content.Length, .. System.Text.Encoding.ASCII.GetBytes(kind), .. content, 0, 0, 0, 0];
}
