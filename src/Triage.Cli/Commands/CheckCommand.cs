using System.Collections.Immutable;
using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes;
using Triage.Notes.Linting;
using Triage.Workshop.Books;
using Triage.Workshop.Knowledge;

namespace Triage.Cli.Commands;

/// <summary><c>triage check</c>: what is wrong with the notes and the bench's settings.</summary>
internal static class CheckCommand
{
    public static Command Of(Desk desk)
    {
        var strict = new Option<bool>("--strict") { Description = "Ends with 1 when there are warnings, too." };
        return desk.Command("check", "Lists what is wrong with the notes, with file, line and column, and what they leave out. Ends with 1 when there are errors.", [strict], (typed, _) =>
        {
            var sources = Books.Of(typed.GetValue(desk.BookOption) ?? []);
            var checkedBooks = KnowledgeCheck.Check(BookReader.ReadAll(sources.Select(s => (s.Name, s.Folder))));
            var said = SettingsCheck.BookOf(sources) is { } home ? SettingsCheck.Of(sources, checkedBooks.SelectMany(b => b.Notes)).Select(p => Row(sources, home.Name, p)) : [];
            var missing = checkedBooks.SelectMany(book => MissingFiles.Of(book.Notes, sources.First(s => s.Name == book.Name).Folder).Select(p => Row(sources, book.Name, p)));
            var kept = sources.Where(s => s.Writable).SelectMany(s => new BookFolder(s, desk.Clock).FoundNoPlace.Select(p => Row(sources, s.Name, p)));
            var problems = said.Concat(checkedBooks.SelectMany(book => book.Problems.Select(p => Row(sources, book.Name, p)))).Concat(missing).Concat(kept).ToImmutableArray();
            var page = new CheckPage(checkedBooks.Sum(b => b.Notes.Length), Count(problems, Severity.Error), Count(problems, Severity.Warning), Count(problems, Severity.Hint), problems);
            desk.Sheet().Show(page, paper => Write(paper, page), typed.GetValue(desk.JsonOption));
            return Task.FromResult(page.Errors > 0 || (typed.GetValue(strict) && page.Warnings > 0) ? ExitCode.ErrorsFound : ExitCode.Ok);
        });
    }

    private static int Count(ImmutableArray<ProblemRow> problems, Severity severity) => problems.Count(p => p.Severity == severity);

    private static ProblemRow Row(ImmutableArray<BookSource> sources, string book, Problem problem)
    {
        var file = Path.Combine(sources.First(s => s.Name == book).Folder, problem.Path);
        var near = Path.GetRelativePath(Environment.CurrentDirectory, file);
        return new(near.StartsWith("..", StringComparison.Ordinal) ? file : near, problem.Line, problem.Column, problem.Severity, problem.What, problem.Instead);
    }

    private static void Write(Sheet paper, CheckPage page)
    {
        foreach (var problem in page.Problems)
            paper.Raw(Printable.Line($"{problem.File}:{problem.Line}:{problem.Column}: {Inputs.Word(problem.Severity)}: {problem.What} {problem.Instead}"));
        paper.Raw($"{page.Notes} notes used: {page.Errors} errors, {page.Warnings} warnings, {page.Hints} hints.");
    }
}

/// <summary>What --json says of the check.</summary>
/// <param name="Notes">Notes that can be reasoned with.</param>
internal sealed record CheckPage(int Notes, int Errors, int Warnings, int Hints, ImmutableArray<ProblemRow> Problems);

/// <param name="Line">From 1; 0 when the whole file is meant.</param>
/// <param name="Column">From 1; 0 when the whole line is meant.</param>
internal sealed record ProblemRow(string File, int Line, int Column, Severity Severity, string What, string Instead);
