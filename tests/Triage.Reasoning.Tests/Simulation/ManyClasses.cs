using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using Triage.Reasoning.Learning;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>
/// A workshop with five sorts of machine: each has five faults of its own and some of ten that several can have. True rates are drawn from what the
/// learner believes: around the notes, then by sort around those. Deterministic by seed.
/// </summary>
sealed class ManyClasses
{
    const int Own = 5, Common = 10;
    const double NoteJobs = 6;

    readonly Random random;
    readonly Dictionary<string, ImmutableDictionary<string, double>> truth = [];

    public ManyClasses(int seed)
    {
        random = new(seed);
        string[] common = [.. Enumerable.Range(0, Common).Select(f => $"common-{f}")];
        ImmutableArray<KnownScope> scopes = [.. Enumerable.Range(0, 5).Select(c => KnownScope.Of($"class-{c}",
            [.. Enumerable.Range(0, Own).Select(f => $"own-{c}-{f}"), .. common.Where((_, f) => f == c || random.Next(2) == 0)]))];
        Notes = new()
        {
            Faults = [.. scopes.SelectMany(scope => scope.Availability.Keys).Distinct().Order(StringComparer.Ordinal).Select(id => new KnownFault(id, null, 0.02 + 0.2 * random.NextDouble(), NoteJobs))],
            Findings = [],
            Scopes = scopes,
        };
        var noted = Notes.Faults.ToDictionary(fault => fault.Id, fault => fault.Share);
        var rates = Drawn(noted, fault => NoteJobs / scopes.Where(scope => scope.Availability.ContainsKey(fault)).Average(scope => Sum(scope, noted)));
        foreach (KnownScope scope in scopes) truth[scope.Id] = Shares(scope, Drawn(rates, _ => LearnerSettings.Default.Pooling.ShareLevels[0] / Sum(scope, rates)));
        foreach (KnownScope scope in scopes) truth["all " + scope.Id] = Shares(scope, rates);
    }

    public Knowledge Notes { get; }

    /// <summary>Share of a cause among those of a sort.</summary>
    public double Share(KnownScope scope, string fault) => truth[scope.Id][fault];

    /// <summary>The same if the sort were like all others.</summary>
    public double GeneralShare(KnownScope scope, string fault) => truth["all " + scope.Id][fault];

    /// <summary>Jobs on machines of these sorts.</summary>
    public ImmutableArray<JobRecord> Jobs(int count, ImmutableArray<KnownScope> sorts) => [.. Enumerable.Range(0, count).Select(i => Job(i, sorts[random.Next(sorts.Length)]))];

    /// <summary>Mean −ln of the chance that the learned shares gave to what happens on a sort of machine.</summary>
    public double Loss(Learned learned, KnownScope scope)
    {
        var shares = learned.Shares(scope, [scope.Id]);
        return scope.Availability.Keys.Sum(fault => -Share(scope, fault) * Math.Log(shares[fault].Mean));
    }

    JobRecord Job(int index, KnownScope sort)
    {
        double u = random.NextDouble();
        string cause = sort.Availability.Keys.First(fault => (u -= Share(sort, fault)) < 0 || fault == sort.Availability.Keys.Last());
        return new() { Id = $"{index:D6}", Closed = DateTimeOffset.UnixEpoch.AddHours(index), Levels = [sort.Id], Scope = sort.Id, Causes = [new(cause)], Weight = 1 };
    }

    Dictionary<string, double> Drawn(Dictionary<string, double> around, Func<string, double> lent) =>
        around.ToDictionary(rate => rate.Key, rate => Math.Max(1e-9, Gamma.Sample(random, rate.Value * lent(rate.Key), lent(rate.Key))));

    static double Sum(KnownScope scope, Dictionary<string, double> rates) => scope.Availability.Keys.Sum(fault => rates[fault]);

    static ImmutableDictionary<string, double> Shares(KnownScope scope, Dictionary<string, double> rates) =>
        scope.Availability.Keys.ToImmutableDictionary(fault => fault, fault => rates[fault] / Sum(scope, rates));
}
