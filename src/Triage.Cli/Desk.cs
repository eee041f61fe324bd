using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json;
using Triage.Cli.Paper;
using Triage.Notes;
using Triage.Search.Meaning;
using Triage.Workshop;
using Triage.Workshop.Books;
using Triage.Workshop.Model;

namespace Triage.Cli;

/// <summary>What all commands share: the books, the face of the output, and how they end.</summary>
internal sealed class Desk(TextWriter output, TextWriter errors, TimeProvider clock, SentenceVectors? meaning, RememberedFits? fits, string? runtime)
{
    public Option<string[]> BookOption { get; } = new("--book")
    {
        Description = "A bench book to open, as FOLDER or NAME=FOLDER[:own|known|stranger]. May be given several times; the first own one is written to.",
        Recursive = true,
        DefaultValueFactory = _ => [],
    };

    public Option<bool> JsonOption { get; } = new("--json") { Description = "Say the result as JSON.", Recursive = true };

    public TimeProvider Clock => clock;

    /// <summary>Folder for what only this user may read while a bench is served; null to keep it nowhere.</summary>
    public string? Runtime => runtime;

    /// <summary>How every command opens books.</summary>
    public BenchOptions Opening(ImmutableArray<BookSource> books) => new() { Books = books, Clock = clock, Meaning = meaning, Fits = fits };

    /// <summary>A line now and then while something takes long.</summary>
    /// <param name="words">How far it is.</param>
    public IProgress<T> Progress<T>(Func<T, string> words) => new ProgressLine<T>(errors, clock, words);

    /// <summary>A command that opens the bench once.</summary>
    /// <param name="inputs">Arguments in order, and options.</param>
    public Command Command(string name, string description, IEnumerable<Symbol> inputs, Func<Session, ExitCode> run) =>
        Command(name, description, inputs, async (typed, stop) =>
        {
            var books = Books.Of(typed.GetValue(BookOption) ?? []);
            await using var live = LiveBench.Open(Opening(books) with { Watch = false });
            return run(new(live, books, typed, new(output), typed.GetValue(JsonOption), stop));
        });

    /// <summary>A command that opens what it needs by itself.</summary>
    public Command Command(string name, string description, IEnumerable<Symbol> inputs, Func<ParseResult, CancellationToken, Task<ExitCode>> run)
    {
        var command = new Command(name, description);
        foreach (var input in inputs)
        {
            if (input is Argument argument)
                command.Arguments.Add(argument);
            else if (input is Option option)
                command.Options.Add(option);
        }

        command.SetAction(async (typed, stop) => (int)await Ended(typed, () => run(typed, stop)));
        return command;
    }

    public Sheet Sheet() => new(output);

    /// <summary>A command line that does not parse.</summary>
    public int Misused(ParseResult typed)
    {
        foreach (var error in typed.Errors)
            errors.WriteLine(Printable.Line(error.Message));
        var command = typed.CommandResult.Command;
        var words = new[] { command.Parents.OfType<Command>().FirstOrDefault(), command }.Where(c => c is not (null or RootCommand)).Select(c => c!.Name);
        errors.WriteLine($"See {string.Join(' ', words.Prepend("triage"))} --help.");
        return (int)ExitCode.Usage;
    }

    private async Task<ExitCode> Ended(ParseResult typed, Func<Task<ExitCode>> run)
    {
        try
        {
            return await run();
        }
        catch (RefusedException e)
        {
            return Refuse(typed, e.Refusal, ExitCodes.Of(e.Refusal.Kind));
        }
        catch (OperationCanceledException)
        {
            errors.WriteLine(CommandTexts.Interrupted);
            return ExitCode.Interrupted;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Refuse(typed, CommandTexts.Unreadable("A file of the book", e.Message), ExitCode.CannotAccess);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            return Refuse(typed, CommandTexts.Unforeseen(e), ExitCode.CannotAccess);
        }
    }

    private ExitCode Refuse(ParseResult typed, Refusal refusal, ExitCode code)
    {
        errors.WriteLine(typed.GetValue(JsonOption) ? JsonSerializer.Serialize(refusal, WireFormat.Options) : Printable.Line(refusal.ToString()));
        return code;
    }
}
