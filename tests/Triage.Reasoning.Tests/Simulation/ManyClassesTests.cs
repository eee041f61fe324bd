using System.Collections.Immutable;
using Triage.Reasoning.Learning;
using Xunit;

namespace Triage.Reasoning.Tests.Simulation;

/// <summary>Learning on some sorts of machine must not make others worse.</summary>
[Trait("run", "long")]
public class ManyClassesTests
{
    const int Workshops = 60, Jobs = 250;

    [Fact]
    public void OnASortNeverMet_JobsOfOthersForecastNoWorseThanNone_AndOnThoseMetBetter()
    {
        var losses = Enumerable.Range(0, Workshops).Select(Losses).ToArray();
        double unmetBefore = losses.Average(l => l.UnmetBefore), unmetAfter = losses.Average(l => l.UnmetAfter);
        double metBefore = losses.Average(l => l.MetBefore), metAfter = losses.Average(l => l.MetAfter), mixed = losses.Average(l => l.AllAlike);

        Say($"log-loss on a sort never met {unmetBefore:F4} with no job, {unmetAfter:F4} after {Jobs} of others (all machines alike {mixed:F4}); on sorts met {metBefore:F4} and {metAfter:F4}");
        Assert.True(unmetAfter <= unmetBefore);
        Assert.True(metAfter < metBefore - 0.1);
        Assert.True(unmetAfter < mixed);
    }

    [Fact]
    public void NinetyPercentIntervalsOfShares_CoverBetween85And95_OnSortsMetAndNever()
    {
        var covered = Enumerable.Range(0, 300).SelectMany(Covered).GroupBy(c => c.What).ToDictionary(g => g.Key, g => g.Average(c => c.Holds ? 1.0 : 0));

        Say(string.Join(", ", covered.Select(c => $"{c.Key} {c.Value:P1}")));
        Assert.All(covered, each => Assert.InRange(each.Value, 0.85, 0.95));
    }

    [Fact]
    public void Rates_AreRecoveredFromMachinesOfAllSorts()
    {
        var random = new Random(11);
        double[] rates = [.. Enumerable.Range(0, 12).Select(_ => Math.Exp(random.NextDouble() * 3 - 1.5))];
        ImmutableArray<KnownScope> scopes = [.. Enumerable.Range(0, 6).Select(s => new KnownScope($"sort-{s}",
            Enumerable.Range(0, 12).Where(f => f % 6 == s || random.Next(3) == 0).ToImmutableSortedDictionary(f => $"f{f:D2}", _ => random.Next(3) == 0 ? 0.3 : 1.0, StringComparer.Ordinal)))];
        Knowledge vague = new() { Faults = [.. rates.Select((_, f) => new KnownFault($"f{f:D2}", null, 1, 1))], Findings = [], Scopes = scopes };

        Learned learned = Learner.Learn(vague, Enumerable.Range(0, 20_000).Select(i => Drawn(random, i, scopes[random.Next(6)], rates)), LearnerSettings.Default);

        double[] ratios = [.. rates.Select((rate, f) => Math.Log(learned.Share($"f{f:D2}", []).Mean / rate))];
        Say($"ln of learned over true rate, common factor taken out: {string.Join(", ", ratios.Select(ratio => $"{ratio - ratios.Average():F3}"))}");
        Assert.All(ratios, ratio => Assert.InRange(ratio - ratios.Average(), -0.12, 0.12));
    }

    static (double UnmetBefore, double UnmetAfter, double AllAlike, double MetBefore, double MetAfter) Losses(int seed)
    {
        var workshop = new ManyClasses(seed);
        var (unmet, met) = (workshop.Notes.Scopes[0], workshop.Notes.Scopes[1..]);
        ImmutableArray<JobRecord> jobs = workshop.Jobs(Jobs, met);
        Learned none = Learn(workshop.Notes), learned = Learn(workshop.Notes, jobs);
        Learned alike = Learn(workshop.Notes with { Scopes = [] }, jobs.Select(job => job with { Scope = KnownScope.Anything }));
        return (workshop.Loss(none, unmet), workshop.Loss(learned, unmet), workshop.Loss(alike, unmet), met.Average(scope => workshop.Loss(none, scope)), met.Average(scope => workshop.Loss(learned, scope)));
    }

    static IEnumerable<(string What, bool Holds)> Covered(int seed)
    {
        var workshop = new ManyClasses(seed);
        var (unmet, met) = (workshop.Notes.Scopes[0], workshop.Notes.Scopes[1..]);
        Learned learned = Learn(workshop.Notes, workshop.Jobs(120, met));
        return [.. Of("never met", unmet, [unmet.Id], workshop.Share), .. Of("met", met[0], [met[0].Id], workshop.Share), .. Of("everywhere", met[0], [], workshop.GeneralShare)];

        IEnumerable<(string, bool)> Of(string what, KnownScope scope, ImmutableArray<string> levels, Func<KnownScope, string, double> truth)
        {
            var shares = learned.Shares(scope, levels);
            return scope.Availability.Keys.Select(fault => (what, Within(shares[fault].Interval(0.9), truth(scope, fault))));
        }
    }

    static bool Within(Interval interval, double truth) => truth >= interval.Lower && truth <= interval.Upper;

    static JobRecord Drawn(Random random, int index, KnownScope scope, double[] rates)
    {
        double[] chances = [.. scope.Availability.Select(a => a.Value * rates[int.Parse(a.Key[1..], System.Globalization.CultureInfo.InvariantCulture)])];
        double u = random.NextDouble() * chances.Sum();
        int cause = Enumerable.Range(0, chances.Length).First(i => (u -= chances[i]) < 0 || i == chances.Length - 1);
        return new() { Id = $"{index}", Closed = DateTimeOffset.UnixEpoch, Levels = [], Scope = scope.Id, Causes = [new(scope.Availability.Keys.ElementAt(cause))], Weight = 1 };
    }

    static Learned Learn(Knowledge notes, params IEnumerable<JobRecord> jobs) => Learner.Learn(notes, jobs, LearnerSettings.Default);

    static void Say(string text) => TestContext.Current.TestOutputHelper!.WriteLine(text);
}
