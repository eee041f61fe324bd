using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Reasoning.Networks;
using Triage.Workshop.Readings;

namespace Triage.Workshop.Model;

/// <summary>
/// Readings taken between the same two repairs as likelihoods on the roots of their parts. Readings of one part in one mode are
/// not independent: the one with a leg lifted stands before one in circuit, three looks before one, the later before the earlier.
/// </summary>
internal sealed class ReadingEvidence(DeviceNetwork network, ReadingJudge judge)
{
    /// <param name="stretch">Readings between two repairs, oldest first, each with the epoch it was taken in.</param>
    /// <param name="tests">Measuring tests recorded in the same stretch: what they tell is not counted again.</param>
    public IEnumerable<WeighedReading> Of(IReadOnlyList<(Read Entry, int Epoch)> stretch, IReadOnlyList<Test> tests)
    {
        var reads = stretch.Select(s => s.Entry).ToList();
        var judged = stretch.Select(s => new WeighedReading(s.Entry, s.Epoch, judge.Judge(s.Entry, reads))).ToList();
        foreach (var unused in judged.Where(j => j.Verdict.NotUsed is not null))
            yield return unused;
        foreach (var same in judged.Where(j => j.Verdict.NotUsed is null).GroupBy(j => Key(j.Verdict)))
        {
            var best = same.MaxBy(j => (j.Verdict.Reading!.OneLegLifted, j.Verdict.ThreeLooks, judged.IndexOf(j)))!;
            yield return Counted(best.Verdict, tests) is { } test ? best with { Verdict = best.Verdict with { NotUsed = ReadingTexts.CountedWith(test.Name) } }
                : best with { Likelihood = Likelihood(best.Verdict, best.Epoch) };
        }
    }

    private static (string, string?, int, string) Key(ReadingVerdict verdict) =>
        (verdict.Part!, verdict.Measured!.Role, (int)verdict.Row!.Mode, string.Join(' ', verdict.Row.At));

    private static Test? Counted(ReadingVerdict verdict, IReadOnlyList<Test> tests) => tests.FirstOrDefault(t =>
        (t.MeasuresRole is null || t.MeasuresRole == verdict.Measured!.Role)
        && (t.MeasuresPart is null || t.MeasuresPart == verdict.Measured!.Class.Id)
        && t.InPlace != verdict.Reading!.OneLegLifted);

    /// <summary>
    /// Null when no listed fault is of this part. Where several parts share the role, the faulty one is as likely each of them:
    /// P(reading | mode) is then that share of the mode's and the rest of a good one's.
    /// </summary>
    private RootLikelihood? Likelihood(ReadingVerdict verdict, int epoch)
    {
        var part = verdict.Measured!;
        var modes = network.Scope.Faults.Where(f => f.Mode is not null && f.Part == part.Class.Id && (f.Role is null || f.Role == part.Role))
            .OrderBy(f => f.Role is null).ToList();
        if (modes.SelectMany(f => network.Faults.GetValueOrDefault(f.Id, [])).Select(p => (int?)p.Root).FirstOrDefault() is not { } root)
            return null;
        var modeOf = modes.ToDictionary(f => f.Id, f => f.Mode!, StringComparer.Ordinal);
        var (good, share) = (verdict.Of("good"), 1.0 / part.Alike);
        return new(
            root,
            [.. network.Network.Roots[root].States.Select(s => s.Faults.Where(modeOf.ContainsKey).Select(f => modeOf[f]).FirstOrDefault() is { } mode
                ? (share * verdict.Of(mode)) + ((1 - share) * good)
                : good)],
            epoch);
    }
}

/// <summary>A reading with its verdict and, when it is weighed, its likelihood on the root of its part.</summary>
internal sealed record WeighedReading(Read Entry, int Epoch, ReadingVerdict Verdict)
{
    public RootLikelihood? Likelihood { get; init; }

    /// <summary>Why it was not weighed, in words; null when it was.</summary>
    public string? Remark =>
        Verdict.NotUsed is { } why ? $"Reading not weighed, “{Entry.Text}”: {why}."
        : Likelihood is null ? $"Reading not weighed, “{Entry.Text}”: no listed fault is of {Verdict.Part}."
        : null;
}
