using System.Collections.Immutable;
using Triage.Reasoning.Learning;
using Triage.Reasoning.Networks;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>
/// Jobs of a workshop with hidden true numbers: machines fail, technicians check some findings, write down some of those, and are wrong
/// sometimes; what was mended holds or comes back, and of some nobody ever hears. Deterministic by seed.
/// </summary>
sealed class SimulatedWorkshop(int seed, Habits habits)
{
    /// <summary>P(a repair cures), mean days until what is not cured is back, P(the owner is heard of at all), mean days until then.</summary>
    public const double Cures = 0.7;
    public const double ComebackDays = 30;
    const double HeardOf = 0.6;
    const double HeardAfterDays = 60;

    readonly Random random = new(seed + 1_000_003);

    public HiddenTruth Truth { get; } = new(seed);

    public Network NetworkOn(ImmutableArray<string> device) => Truth.NetworkOn(device, habits.Severity);

    public ImmutableArray<JobRecord> Jobs(int count) => [.. Enumerable.Range(0, count).Select(Job)];

    public JobRecord Job(int index)
    {
        ImmutableArray<string> device = SixMachines.Devices[Math.Min(random.Next(8), random.Next(8)) * SixMachines.Devices.Length / 8];
        Network network = NetworkOn(device);
        int[] states = Fail(network);
        ImmutableArray<JobCause> causes = [.. states.Select((state, r) => (state, r)).Where(root => root.state > 0).Select(root => new JobCause(network.Roots[root.r].Id))];
        CheckedFinding[] seen = [.. network.Findings.Where(_ => random.NextDouble() < habits.Checks).Select(finding => See(finding, states)).Where(Written)];
        if (causes.Length == 1 && random.NextDouble() < habits.Misdiagnoses) causes = [new(network.Roots[random.Next(network.Roots.Length)].Id)];
        return new()
        {
            Id = $"job-{index:D6}",
            Closed = DateTimeOffset.UnixEpoch.AddHours(index),
            Levels = device,
            Causes = causes,
            Weight = 1,
            Checked = [.. seen],
            Tried = [Mended()],
        };
    }

    int[] Fail(Network network)
    {
        int[] states;
        do states = [.. network.Roots.Select(root => Draw([.. root.Prior]))];
        while (states.All(state => state == 0));
        return states;
    }

    /// <summary>The largest of what the leak and every cause produce.</summary>
    CheckedFinding See(Finding finding, int[] states)
    {
        int value = Draw([.. finding.Ambient]);
        foreach (Link link in finding.Links)
            if (states[link.Root] == link.State) value = Math.Max(value, Draw([.. link.Produces]));
        return new(finding.Id, finding.Values[value]);
    }

    bool Written(CheckedFinding seen)
    {
        bool normal = SixMachines.Notes.Findings.Single(f => f.Id == seen.Finding).Values[0] == seen.Value;
        return random.NextDouble() < habits.Records * (normal ? habits.RecordsNormal : 1);
    }

    TriedAction Mended()
    {
        bool cured = random.NextDouble() < Cures, heard = random.NextDouble() < HeardOf;
        double back = Exponential(ComebackDays), asked = Exponential(HeardAfterDays);
        return !heard ? new("mend", true, null) : !cured && back < asked ? new("mend", true, false, back) : new("mend", true, null, asked);
    }

    double Exponential(double mean) => -mean * Math.Log(1 - random.NextDouble());

    int Draw(double[] chances)
    {
        double u = random.NextDouble();
        for (int i = 0; i < chances.Length - 1; i++)
            if ((u -= chances[i]) < 0) return i;
        return chances.Length - 1;
    }
}
