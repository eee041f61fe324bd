using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Tools.Exam.Cases;
using Triage.Workshop.Answers;
using Triage.Workshop.Jobs;
using Triage.Workshop.Knowledge;
using Triage.Workshop.Model;
using Triage.Workshop.Steps;

namespace Triage.Tools.Exam.Playing;

/// <summary>Follows the product's own next step until the job ends or the steps are used up.</summary>
internal sealed class CourseOfSteps(ExamBench bench, string jobId, IPlayer player)
{
    /// <summary>A machine that is not through after as many is given up.</summary>
    public const int MostSteps = 15;

    private readonly List<Turn> turns = [];
    private readonly List<Standing> standings = [];
    private readonly HashSet<string> cannotTell = [];
    private string? trouble;
    private int? mendedBy;

    private Job Job => bench.Live.Current.Notes.Find<Job>(jobId)!;

    private JobSteps Steps => bench.Live.Steps;

    public Course Play()
    {
        ImmutableArray<string> told = [.. Job.Log.OfType<Saw>().Select(s => bench.Live.Current.Notes.Today(s.Finding))];
        var ending = ToTheEnd();
        return new() { Told = told, Turns = [.. turns], Standings = [.. standings], Ending = ending, Trouble = trouble, MendedBy = mendedBy };
    }

    private Ending ToTheEnd()
    {
        while (true)
        {
            var asked = bench.Live.Current.AnswerFor(Job);
            if (asked.Answer is not { } answer)
                return Stuck(asked.Refused!.ToString());
            standings.Add(new([.. answer.Causes.Select(c => c.Fault)], player.Unmended));
            if (answer.Next?.Kind == StepKind.Close)
                return Ending.Mended;
            if (turns.Count >= MostSteps)
                return Ending.None;
            if (NextOf(answer) is not { } turn)
                return Stuck("The product gives no next step.");
            if (Take(turn) is { } ending)
                return ending;
        }
    }

    private Ending Stuck(string why)
    {
        trouble = why;
        return Ending.None;
    }

    private StepNotes Notes => new(bench.Live.Current.Notes, bench.Live.Current.ScopeOf(Job)!);

    /// <summary>The next step; the one after it where it cannot be told what the first would show.</summary>
    private Turn? NextOf(Answer answer) => answer.Next is not { } next ? null
        : cannotTell.Contains(next.Id) ? next.Others.Where(o => !cannotTell.Contains(o.Id)).Select(o => Turn(o.Id, o.Kind, o.Name, o.Cautions, o.Steps)).FirstOrDefault()
        : IsProof(next) ? new(TurnPart.Proof, next.Id, next.Kind, next.Name) { Minutes = next.Minutes, Says = Says(next.Cautions, next.Steps) }
        : Turn(next.Id, next.Kind, next.Name, next.Cautions, next.Steps);

    /// <summary>A proof goes by the id of what it proves.</summary>
    private bool IsProof(NextBestStep next) =>
        next.Kind == StepKind.Recheck || (next.Kind == StepKind.Provoke && bench.Live.Current.Notes.Find<Test>(next.Id) is null);

    private Turn Turn(string id, StepKind kind, string name, ImmutableArray<Caution> cautions, ImmutableArray<string> steps) =>
        new(StepNotes.EndingOf(id) is null ? TurnPart.Step : TurnPart.Ending, id, kind, name)
        {
            Minutes = Math.Max(LeastMinutes, Notes.EffortOf(id)?.Minutes ?? AlwaysThere.MinutesOf(id)),
            OpeningMinutes = Notes.OpensFor(id, OpenSteps.Of(Job.Log)).Sum(a => a.Minutes),
            Says = Says(cautions, steps),
        };

    /// <summary>A look, a question, writing down what came of it (common practice, no source).</summary>
    private const double LeastMinutes = 1;

    private static ImmutableArray<string> Says(ImmutableArray<Caution> cautions, ImmutableArray<string> steps) =>
        [.. cautions.Select(c => $"Caution: {c.Say}"), .. steps];

    /// <summary>Does one step and records it; how the job ended when that step ends it.</summary>
    private Ending? Take(Turn turn)
    {
        player.Comes(turn);
        bench.Clock.Pass(turn.Minutes + turn.OpeningMinutes);
        foreach (var opened in Notes.OpensFor(turn.Id, OpenSteps.Of(Job.Log)))
            Record(Steps.Opened(jobId, opened.Id));
        if (StepNotes.EndingOf(turn.Id) is { } ending)
        {
            turns.Add(turn with { Rows = [new(turn.Id, turn.Name, null, "the job ends")] });
            return ending;
        }

        var done = turn.Part == TurnPart.Proof ? Proven(turn) : Notes.RowsOf(turn.Id, turn.Name) is { IsEmpty: false } rows ? Looked(turn, rows) : Done(turn);
        turns.Add(done with { Rows = [.. done.Rows.Select(row => row with { Misfit = !Notes.Fits(row.Id, player.Build) })] });
        return null;
    }

    private Turn Proven(Turn turn)
    {
        var holds = player.StillWorks(turn.Id);
        Record(Steps.Held(jobId, turn.Id, holds));
        return turn with { Rows = [new(turn.Id, turn.Name, null, holds ? "still works" : "the fault is back")], ChangedTheMachine = !holds };
    }

    private Turn Looked(Turn turn, ImmutableArray<Asked> rows) => turn with { Rows = [.. rows.Select(row => Answered(turn.Id, row))] };

    private Row Answered(string step, Asked asked)
    {
        var value = player.Sees(asked);
        if (value is null)
            cannotTell.Add(step);
        else if (step == AlwaysThere.AskConsent)
            Record(Steps.Agree(jobId, Job.Consent with { MayErase = value == StepNotes.Agreed }));
        else
            Record(bench.Live.Current.Notes.Find<Test>(step) is not null ? Steps.Tested(jobId, step, value) : Steps.Saw(jobId, asked.Finding!, value));
        return new(asked.Id, asked.Name, asked.Finding ?? $"measured:{asked.Id}", asked.Choices.FirstOrDefault(c => c.Id == value)?.Name ?? value);
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
        return turn with { Rows = [new(turn.Id, turn.Name, null, InWords(effect))], ChangedTheMachine = effect == Effect.Works };
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
