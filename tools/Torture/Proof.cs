using System.Security.Cryptography;
using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Workshop;

namespace Torture;

/// <summary>Whether everything is there after a round.</summary>
internal sealed record Proof(int Lost, int Unread, int Unequal, IReadOnlyList<string> Said)
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    public static async Task<Proof> Of(Round round, LiveBench onlooker)
    {
        var said = new List<string>();
        await using var fresh = round.Open();
        var lines = fresh.Current.Notes.Jobs.SelectMany(j => j.Log.OfType<QuickLine>()).CountBy(l => l.Text).ToDictionary();
        var lost = round.Lines.Where(l => lines.GetValueOrDefault(l) != 1).ToList();
        var photos = Directory.EnumerateFiles(round.Folder, "*.jpg", SearchOption.AllDirectories).Select(f => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f)))).ToHashSet();
        lost.AddRange(round.Photos.Where(p => !photos.Contains(p)));
        lost.AddRange(LostTexts(round));
        var unread = BookReader.ReadIndex("small", round.Folder).Readings.Where(r => r.Note is null).Select(r => r.Place.Path).ToList();
        said.AddRange(lost.Select(l => $"lost: {l}"));
        said.AddRange(unread.Select(u => $"does not read: {u}"));
        var unequal = await Differs(fresh.Current, onlooker) is { } what;
        if (unequal)
            said.Add("the bench that looked on differs from a fresh one");
        return new(lost.Count, unread.Count, unequal ? 1 : 0, said);
    }

    /// <summary>An editor's text is in a note, or kept beside it.</summary>
    private static IEnumerable<string> LostTexts(Round round)
    {
        if (round.Saved.IsEmpty)
            return [];
        var all = string.Join('\n', Directory.EnumerateFiles(round.Folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint })
            .Where(f => f.EndsWith(".md", StringComparison.Ordinal) || f.Contains("/.bench/kept/", StringComparison.Ordinal) || f.Contains("/.bench/history/", StringComparison.Ordinal)).Select(File.ReadAllText));
        return round.Saved.Where(s => !all.Contains(s, StringComparison.Ordinal)).ToList();
    }

    /// <summary>What differs once the one that looked on has seen everything; null when nothing does.</summary>
    private static async Task<string?> Differs(Bench fresh, LiveBench onlooker)
    {
        var (wanted, end) = (Numbers(fresh), TimeProvider.System.GetUtcNow() + Longest);
        while (TimeProvider.System.GetUtcNow() < end)
        {
            if (wanted.SequenceEqual(Numbers(onlooker.Current)))
                return null;
            await Task.Delay(100);
        }

        return wanted.Except(Numbers(onlooker.Current)).First();
    }

    private static List<string> Numbers(Bench bench)
    {
        var numbers = bench.Notes.Jobs.OrderBy(j => j.Id, StringComparer.Ordinal).Select(j => $"{j.Id}: {j.Log.Length} entries").ToList();
        numbers.Add(FormattableString.Invariant($"{bench.Learned.JobsCounted:R} jobs, {bench.Learned.IndependentFaults:R}"));
        foreach (var device in bench.Notes.Of<Device>().OrderBy(d => d.Id, StringComparer.Ordinal))
            numbers.AddRange(bench.Notes.Of<Fault>().OrderBy(f => f.Id, StringComparer.Ordinal).Select(f => FormattableString.Invariant($"{f.Id} on {device.Id}: {bench.Learned.Share(f.Id, [device.Id, device.Class]).Mean:F12}")));
        return numbers;
    }
}
