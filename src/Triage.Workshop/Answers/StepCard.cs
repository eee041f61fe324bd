using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;

namespace Triage.Workshop.Answers;

/// <summary>A test, question, reset, fix or way of stopping as one shows it: cautions before steps.</summary>
internal sealed record StepCard(string Id, StepKind Kind, string Name)
{
    public ImmutableArray<Caution> Cautions { get; init; } = [];

    public ImmutableArray<string> Steps { get; init; } = [];

    public ImmutableArray<string> Tools { get; init; } = [];

    public double Minutes { get; init; }

    /// <summary>Minutes that pass while nobody works.</summary>
    public double WaitMinutes { get; init; }

    public ReplacementPart? Part { get; init; }
}

/// <summary>Finds the card of a step by its id.</summary>
internal sealed class StepCards(Notebook notes, DeviceScope scope, ActionsOfNotes actions)
{
    public StepCard Of(string id) => notes.Find<Note>(id) switch
    {
        Test test => OfTest(test),
        Reset reset => new(id, StepKind.Reset, reset.Name)
        {
            Cautions = MachineHazards.Met(scope, reset.Effort, reset.Effort.Cautions),
            Steps = [.. reset.Before.Select(b => $"First: {b}"), .. reset.Steps],
            Tools = reset.Effort.Tools,
            Minutes = reset.Effort.Minutes,
            WaitMinutes = reset.Effort.WaitMinutes,
        },
        Finding finding => new(id, scope.Class.Counter.Contains(id) ? StepKind.Ask : StepKind.Look, finding.Ask ?? finding.Name),
        _ => id == AlwaysThere.Exchange && scope.Class.Exchange is { } whole
            ? new(id, StepKind.Swap, AlwaysThere.NameOf(id)!) { Cautions = whole.Effort.Cautions, Tools = whole.Effort.Tools, Minutes = whole.Effort.Minutes, WaitMinutes = whole.Effort.WaitMinutes }
            : actions.Fixes.TryGetValue(id, out var mend) ? OfFix(mend)
            : new(id, AlwaysKind(id), AlwaysThere.NameOf(id) ?? id) { Minutes = AlwaysThere.MinutesOf(id) },
    };

    private static StepKind AlwaysKind(string id) => id switch
    {
        AlwaysThere.HandBack => StepKind.Fix,
        AlwaysThere.AskConsent => StepKind.Ask,
        AlwaysThere.LookItOver => StepKind.Round,
        _ => StepKind.Stop,
    };

    private StepCard OfTest(Test test) => new(test.Id, test.Round.IsEmpty ? Kind(test.Way) : StepKind.Round, test.Name)
    {
        Cautions = MachineHazards.Met(scope, test.Effort, Together(test.Effort.Cautions, PartCautions(test.MeasuresPart))),
        Steps = test.Steps,
        Tools = test.Effort.Tools,
        Minutes = test.Effort.Minutes,
        WaitMinutes = test.Effort.WaitMinutes,
    };

    private StepCard OfFix(Mend mend)
    {
        var mended = scope.Faults.Where(f => f.Mends.Any(m => m.Id == mend.Id)).ToList();
        return new(mend.Id, mend.Swap ? StepKind.Swap : StepKind.Fix, mend.Name ?? mend.Id)
        {
            Cautions = MachineHazards.Met(scope, mend.Effort, Together(mend.Effort.Cautions, mended.SelectMany(f => f.Cautions), PartCautions(mend.Needs))),
            Steps = mend.Steps,
            Tools = mend.Effort.Tools,
            Minutes = mend.Effort.Minutes,
            WaitMinutes = mend.Effort.WaitMinutes,
            Part = mend.Needs is { } needs ? Replacement(needs, mend, mended) : null,
        };
    }

    private ReplacementPart? Replacement(string partClass, Mend mend, List<Fault> mended)
    {
        if (notes.Find<PartClass>(partClass) is not { } part)
            return null;
        var roles = mended.Select(f => f.Role).OfType<string>().ToHashSet();
        var fitted = scope.Device?.Parts.FirstOrDefault(p => p.Part == part.Id && (p.Role is null || roles.Contains(p.Role)));
        return new(part.Name, fitted?.Designator, fitted?.Rating, mend.Effort.Money, mend.Effort.WaitDays,
            part.MustMatch, part.MayBeBetter, part.MustNotChange, part.NewCanBeBad);
    }

    private IEnumerable<Caution> PartCautions(string? partClass) => notes.Find<PartClass>(partClass)?.Cautions ?? [];

    private static ImmutableArray<Caution> Together(params IEnumerable<Caution>[] cautions) => [.. cautions.SelectMany(c => c).Distinct()];

    private static StepKind Kind(TestWay way) => way switch
    {
        TestWay.Ask => StepKind.Ask,
        TestWay.Look => StepKind.Look,
        TestWay.Listen => StepKind.Listen,
        TestWay.Measure => StepKind.Measure,
        TestWay.Provoke => StepKind.Provoke,
    };
}
