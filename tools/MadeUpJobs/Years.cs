using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace MadeUpJobs;

/// <summary>Six years of a workshop that never was. The same notes and seed give the same jobs.</summary>
internal sealed class Years
{
    /// <summary>Jobs of this number and above in a year are made up; those below are written by hand.</summary>
    private const int FirstNumber = 101;

    private static readonly DateTimeOffset First = new(2020, 10, 3, 10, 0, 0, TimeSpan.FromHours(1));
    private static readonly string[] Families = ["Oosterveen", "Halderick", "Munsterhof", "Brakelaar", "Vennestra", "Dolleman", "Kwintsheul", "Pennaerts", "Roelink", "Zandvliet", "Tuinmans", "Averdijk"];

    private readonly Random random;
    private readonly Notebook notes;
    private readonly DeviceScope[] machines;
    private readonly Dictionary<string, double> seen;
    private readonly Dictionary<string, double> truth;

    public Years(Notebook notes, int seed)
    {
        (this.notes, random) = (notes, new(seed));
        machines = [.. notes.Of<Device>().OrderBy(d => d.Id, StringComparer.Ordinal).Select(d => DeviceScope.Of(notes, d, notes.Find<DeviceClass>(d.Class)!))];
        seen = machines.ToDictionary(m => m.Device!.Id, _ => random.Around(0.6));
        truth = notes.Of<Fault>().OrderBy(f => f.Id, StringComparer.Ordinal).ToDictionary(f => f.Id, _ => random.Around(0.7));
    }

    public IEnumerable<Job> Jobs(int count)
    {
        var days = random.Shuffled(Enumerable.Range(0, 2190)).Take(count).Order().ToList();
        var numbers = new Dictionary<int, int>();
        foreach (var day in days)
        {
            var opened = First.AddDays(day).AddMinutes(random.Next(0, 650));
            numbers[opened.Year] = numbers.GetValueOrDefault(opened.Year, FirstNumber - 1) + 1;
            yield return Job($"{opened.Year}-{numbers[opened.Year]}", opened);
        }
    }

    private Job Job(string id, DateTimeOffset opened)
    {
        var who = random.Weighted(Technician.All, t => t.Name == "Greet" ? 1.4 : 1);
        var (machine, told) = Told();
        var clock = new Clock(opened);
        var evening = new Evening(machine, who, clock, random);
        evening.Work(told);
        var mended = evening.Cure is not null;
        var complaint = Complaints.Misspelt(Complaints.Of(machine, told, random), who.Misspells, random);
        return new Job(id, Name(machine, told))
        {
            Device = machine.Scope.Device!.Id,
            Opened = opened,
            Technician = who.Name,
            Owner = $"{(char)('A' + random.Next(20))}. {random.Any(Families)}",
            Complaint = complaint,
            Consent = new(random.Any([15.0, 20, 25, 30, 40, 50, 60]), true, random.Happens(0.5) ? false : null),
            Worth = random.Any([25.0, 40, 45, 60, 70, 90, 100]),
            Log = [.. evening.Log],
            Causes = mended ? [new(machine.Cause.Id, evening.Grade)] : [],
            Damage = mended ? [.. machine.Damage.Select(d => d.Id)] : [],
            Outcome = !mended ? random.Any([JobOutcome.PartedOut, JobOutcome.Unsolved, JobOutcome.HandedOver]) : machine.Cause.NothingWrong ? JobOutcome.NothingWrong : JobOutcome.Mended,
            Closed = clock.After(5),
            Minutes = Math.Round(evening.Minutes / 5) * 5,
            FollowUps = mended && random.Happens(who.HearsBack) ? [Heard(clock.Now)] : [],
            Body = Complaints.Misspelt(Remarks.On(machine, told[0], evening, who, random), who.Misspells, random) + "\n",
            Generated = true,
        };
    }

    /// <summary>A machine that does something its owner would complain of, and what the owner says of it.</summary>
    private (SickMachine Machine, Finding[] Told) Told()
    {
        while (true)
        {
            var scope = random.Weighted(machines, m => seen[m.Device!.Id]);
            var machine = SickMachine.Draw(scope, notes, truth, random);
            var asked = scope.Tests.Where(t => t.Way is (TestWay.Ask or TestWay.Look or TestWay.Listen) && t.Effort.Access is null).Select(t => t.Reveals).ToHashSet();
            var outside = scope.Findings.Where(f => asked.Contains(f.Id)).ToList();
            Finding[] odd = [.. random.Shuffled(outside.Where(machine.IsOdd)).Take(random.Next(1, 4))];
            if (odd.Length == 0 || machine.Cause.Mends.All(m => m.Name is null))
                continue;
            return (machine, [.. odd, .. random.Shuffled(outside.Where(f => !machine.IsOdd(f) && !f.Values[0].Says.IsEmpty)).Take(random.Next(0, 2))]);
        }
    }

    private string Name(SickMachine machine, Finding[] told)
    {
        var model = machine.Scope.Device!.Model ?? machine.Scope.Name;
        var odd = Remarks.Small(machine.InWords(told[0]));
        return random.Any<Func<string>>([
            () => $"{model}, {odd}",
            () => $"{model}: {machine.Cause.Name.ToLowerInvariant()}",
            () => $"{model}, {machine.Cause.Name.ToLowerInvariant()}",
            () => $"{model} {odd}",
        ])();
    }

    /// <summary>Most keep working; one in twelve is back within the year.</summary>
    private FollowUp Heard(DateTimeOffset closed)
    {
        var back = random.Happens(0.08);
        var on = closed.AddDays(back ? random.Next(10, 200) : random.Next(90, 500));
        return new(new(on.Year, on.Month, on.Day, 10, 0, 0, on.Offset), back, back ? "same again" : random.Any([null, null, "still fine", "plays every week", "sold on, works"]));
    }
}
