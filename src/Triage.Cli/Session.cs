using System.Collections.Immutable;
using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Notes.Kinds;
using Triage.Workshop;
using Triage.Workshop.Answers;
using Triage.Workshop.Books;
using Triage.Workshop.Steps;

namespace Triage.Cli;

/// <summary>One command at work: the open bench, what was typed, and where to say the result.</summary>
internal sealed class Session(LiveBench live, ImmutableArray<BookSource> books, ParseResult typed, Sheet sheet, bool json, CancellationToken stop)
{
    public LiveBench Live => live;

    public Bench Bench => live.Current;

    /// <summary>Ctrl-C.</summary>
    public CancellationToken Stop => stop;

    public JobSteps Steps => live.Steps;

    public ImmutableArray<BookSource> Books => books;

    /// <summary>The book that is written to.</summary>
    /// <exception cref="RefusedException">None of the open books is one's own.</exception>
    public BookSource OwnBook => books.FirstOrDefault(b => b.Writable) ?? throw new RefusedException(CommandTexts.NoOwnBook);

    /// <summary>The name of the taken book that a note comes from; null when it is of another one.</summary>
    public string? TakenFrom(string id) =>
        Bench.Notes.Find<Note>(id) is { } note && books.Any(b => b.Name == note.Place.Book && b.Trust != Trust.Own) ? note.Place.Book : null;

    public T? Get<T>(Argument<T> argument) => typed.GetValue(argument);

    public T? Get<T>(Option<T> option) => typed.GetValue(option);

    public string Text(Argument<string> argument) => typed.GetValue(argument) ?? "";

    /// <summary>Says the result: as JSON when asked to, else as text.</summary>
    public ExitCode Show(object page, Action<Sheet> write) => sheet.Show(page, write, json);

    /// <summary>A text that is the result itself, to be kept in a file.</summary>
    public ExitCode Print(string text)
    {
        sheet.Raw(text.TrimEnd('\n'));
        return ExitCode.Ok;
    }

    /// <summary>The job after a step.</summary>
    /// <exception cref="RefusedException">The step was refused.</exception>
    public static Job Done(StepResult result) => result.Refused is { } refused ? throw new RefusedException(refused) : result.Job!;

    /// <summary>Says what was recorded last, the leading causes and the next step.</summary>
    public ExitCode ShowRecorded(StepResult result) => ShowStep(result, job => job.Log.IsEmpty ? "" : Bench.InWords(job, job.Log[^1]));

    /// <summary>Says what a step did, the leading causes and the next step.</summary>
    /// <param name="did">In words.</param>
    public ExitCode ShowStep(StepResult result, Func<Job, string> did)
    {
        var job = Done(result);
        var asked = job.IsOpen ? Bench.AnswerFor(job) : new Asked(null, null);
        return Show(new StepPage(job, asked.Answer, result.Remarks), paper => ShortAnswer.Write(paper, Bench, job, did(job), asked, result.Remarks));
    }
}

/// <summary>What --json says after a step.</summary>
internal sealed record StepPage(Job Job, Answer? Answer, ImmutableArray<string> Remarks);
