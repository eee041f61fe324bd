using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Tools.Exam.Cases;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Steps;

namespace Triage.Tools.Exam.Playing;

/// <summary>Follows the product from the counter on, step after step, until the job ends or the steps are used up.</summary>
internal sealed class CourseOfSteps(ExamBench bench, string jobId, IPlayer player)
{
    /// <summary>A machine that is not through after as many is given up.</summary>
    public const int MostSteps = 15;

    private readonly List<Turn> turns = [];
    private readonly List<Standing> standings = [];
    private string? trouble;
    private int? mendedBy;

    private Bench Now => bench.Live.Current;

    private Job Job => Now.Notes.Find<Job>(jobId)!;

    private JobSteps Steps => bench.Live.Steps;

    private StepNotes Notes => new(Now.Notes, Now.ScopeOf(Job)!);

    public Course Play()
    {
        ImmutableArray<string> told = [.. Job.Log.OfType<Saw>().Select(s => Now.Notes.Today(s.Finding))];
        if (Now.AnswerFor(Job) is { Answer: null, Refused: { } unknown })
            return Course.NotTakenIn(unknown.ToString());
        AtTheCounter();
        var ending = ToTheEnd();
        return new() { Told = told, Turns = [.. turns], Standings = [.. standings], Ending = ending, Trouble = trouble, MendedBy = mendedBy };
    }

    /// <summary>The questions are asked as they stand there; then the owner leaves.</summary>
    private void AtTheCounter()
    {
        foreach (var question in Now.AnswerFor(Job).Answer!.Counter)
        {
            var turn = new Turn(TurnPart.Counter, question.Finding, StepKind.Ask, question.Ask) { Minutes = LeastMinutes };
            player.Comes(turn);
            turns.Add(Looked(turn, [new(question.Finding, question.Finding, question.Ask, [.. question.Answers.Select(a => new Choice(a.Value, a.Name))])]));
        }

        Record(Steps.CloseCounter(jobId));
    }

    private Ending ToTheEnd()
    {
        for (var step = 0; Now.AnswerFor(Job).Answer is { } answer; step++)
        {
            standings.Add(new([.. answer.Causes.Select(c => c.Fault)], player.Unmended));
            if (answer.Next?.Kind == StepKind.Close)
                return Ending.Mended;
            if (step >= MostSteps)
                return Ending.None;
            if (answer.Next is not { } next)
                break;
            if (Take(TurnOf(next), next) is { } ending)
                return ending;
        }

        trouble = "The product gives no next step.";
        return Ending.None;
    }

    private Turn TurnOf(NextBestStep next)
    {
        var opening = Notes.OpensFor(next.Id, OpenSteps.Of(Job.Log)).Sum(a => a.Minutes);
        return new(PartOf(next), next.Id, next.Kind, next.Name)
        {
            Minutes = Math.Max(LeastMinutes, next.Minutes - opening),
            OpeningMinutes = opening,
            Says = [.. next.Cautions.Select(c => $"Caution: {c.Say}"), .. next.Steps],
        };
    }

    /// <summary>A look, a question, writing down what came of it (common practice, no source).</summary>
    private const double LeastMinutes = 1;

    /// <summary>A proof goes by the id of what it proves.</summary>
    private TurnPart PartOf(NextBestStep next) =>
        next.Kind == StepKind.Protect ? TurnPart.Protect
        : next.Kind == StepKind.Recheck || (next.Kind == StepKind.Provoke && Now.Notes.Find<Test>(next.Id) is null) ? TurnPart.Proof
        : StepNotes.EndingOf(next.Id) is not null ? TurnPart.Ending
        : TurnPart.Step;

    /// <summary>Does one step and records it; how the job ended when that step ends it.</summary>
    private Ending? Take(Turn turn, NextBestStep next)
    {
        player.Comes(turn);
        bench.Clock.Pass(turn.Minutes + turn.OpeningMinutes + next.WaitMinutes);
        foreach (var opened in Notes.OpensFor(turn.Id, OpenSteps.Of(Job.Log)))
            Record(Steps.Opened(jobId, opened.Id));
        var done = turn.Part switch
        {
            TurnPart.Ending => turn with { Rows = [new(turn.Id, turn.Name, null, "the job ends")] },
            TurnPart.Protect => Secured(turn),
            TurnPart.Proof => Proven(turn),
            TurnPart.Counter or TurnPart.Step => Notes.RowsOf(next) is { IsEmpty: false } rows ? Looked(turn, rows) : Done(turn),
        };
        turns.Add(done);
        return StepNotes.EndingOf(turn.Id);
    }

    private Turn Secured(Turn turn)
    {
        var possible = player.CanSecure(turn.Id);
        Record(Steps.Secured(jobId, turn.Id, possible));
        return turn with { Rows = [new(turn.Id, turn.Name, null, possible ? "secured" : "not possible")] };
    }

    private Turn Proven(Turn turn)
    {
        var holds = player.StillWorks(turn.Id);
        Record(Steps.Held(jobId, turn.Id, holds));
        return turn with { Rows = [new(turn.Id, turn.Name, null, holds ? "still works" : "the fault is back")], ChangedTheMachine = !holds };
    }

    private Turn Looked(Turn turn, ImmutableArray<Asked> rows)
    {
        ImmutableArray<(Asked Asked, string? Value)> seen = [.. rows.Select(row => (row, player.Sees(row)))];
        if (turn.Kind == StepKind.Round)
            RecordRound(turn, seen);
        else
            Record(turn, seen[0].Asked, seen[0].Value);
        return turn with { Rows = [.. seen.Select(s => RowOf(s.Asked, s.Value))] };
    }

    private Row RowOf(Asked asked, string? value) =>
        new(asked.Id, asked.Name, asked.Finding ?? $"measured:{asked.Id}", asked.Choices.FirstOrDefault(c => c.Id == value)?.Name ?? value)
        {
            Names = [asked.Id, .. Notes.ThatShow(asked.Finding)],
            Misfit = !Notes.Fits(asked.Id, player.Build),
        };

    private void Record(Turn turn, Asked asked, string? value) => Record(
        value is null ? Steps.Skip(jobId, turn.Id, SkipReason.CannotTell)
        : turn.Id == AlwaysThere.AskConsent ? Steps.Agree(jobId, Job.Consent with { MayErase = value == StepNotes.Agreed })
        : Now.Notes.Find<Test>(turn.Id) is not null ? Steps.Tested(jobId, turn.Id, value)
        : Steps.Saw(jobId, asked.Finding!, value));

    /// <summary>What cannot be told is left out, and not asked again.</summary>
    private void RecordRound(Turn turn, ImmutableArray<(Asked Asked, string? Value)> seen)
    {
        ImmutableArray<SeenFinding> told = [.. seen.Where(s => s.Value is not null).Select(s => new SeenFinding(s.Asked.Finding!, s.Value!))];
        Record(told.IsEmpty ? Steps.Skip(jobId, turn.Id, SkipReason.CannotTell) : Steps.Round(jobId, turn.Id, told));
        foreach (var (asked, _) in seen.Where(s => s.Value is null))
            Record(Steps.Skip(jobId, asked.Finding!, SkipReason.CannotTell));
    }

    private Turn Done(Turn turn)
    {
        var before = player.AllMended;
        var effect = player.Does(turn.Id);
        if (!before && player.AllMended)
            mendedBy = turns.Count;
        Record(turn.Kind switch
        {
            StepKind.Reset => Steps.Reset(jobId, turn.Id, effect),
            StepKind.Swap => Steps.Swapped(jobId, Notes.MendOf(turn.Id)?.Needs ?? turn.Id, turn.Id, effect),
            _ => Steps.Fixed(jobId, turn.Id, effect),
        });
        var row = new Row(turn.Id, turn.Name, null, InWords(effect)) { Misfit = !Notes.Fits(turn.Id, player.Build) };
        return turn with { Rows = [row], ChangedTheMachine = effect == Effect.Works };
    }

    private static string InWords(Effect effect) => effect switch
    {
        Effect.Works => "it works",
        Effect.NoChange => "no change",
        Effect.Worse => "worse",
        Effect.NotSeen => "the fault did not show",
    };

    private void Record(StepResult result)
    {
        if (result.Refused is { } refused)
            trouble = $"Refused: {refused}";
    }
}
