using Triage.Cli.Typed;
using Triage.Workshop.Books;
using Triage.Workshop.Exchange.Take;

namespace Triage.Cli.Paper;

/// <summary>Somebody else's book: what it brings, and what stays out.</summary>
internal static class TakeText
{
    private const int Shown = 20, Label = 18;

    public static void Write(Sheet paper, IReadOnlyList<TakenBook> books)
    {
        paper.Title(books.Count == 0 ? "No book was taken" : "Books taken");
        foreach (var book in books)
            paper.Field(book.Name, $"{Inputs.Word(book.Trust)}, taken {Amounts.Date(book.On)} from {book.From}", Label);
    }

    public static void Write(Sheet paper, TakeResult result, string name, Trust trust)
    {
        paper.Title(result.Place is null ? $"What the book “{name}” would bring" : $"Taken as “{name}”");
        foreach (var (kind, count) in result.Taken)
            paper.Field(Inputs.Word(kind).Replace('-', ' '), $"{count}", Label);
        Count(paper, "photos", result.Pictures);
        paper.Field("a job counts as", FormattableString.Invariant($"{TrustWeights.Of(trust)} of one's own"), Label);
        Count(paper, "here already", result.AlreadyThere);
        Count(paper, "open jobs left out", result.OpenJobs);
        List(paper, "Says something else than a note here: the one here stays", result.Conflicts, c => $"{c.Id}: theirs “{c.Theirs}”, in {c.Book} “{c.Own}”");
        List(paper, "Another job has that number here: comes in as", result.Renumbered, r => $"{r.Id} as {r.Becomes}");
        List(paper, "Left out", result.LeftOut, l => $"{l.Path}: {l.Why}");
        paper.Blank();
        if (result.Place is { } place)
            paper.Say($"It stands in {place} and is open from now on. Take it away with triage take --remove {name}");
        else
            paper.Say("Nothing is written yet. Add --write to take it.");
    }

    public static void Count(Sheet paper, string label, int count)
    {
        if (count > 0)
            paper.Field(label, $"{count}", Label);
    }

    public static void List<T>(Sheet paper, string heading, IReadOnlyCollection<T> items, Func<T, string> words)
    {
        if (items.Count == 0)
            return;
        paper.Heading(heading);
        foreach (var item in items.Take(Shown))
            paper.Item("-", words(item));
        if (items.Count > Shown)
            paper.Item("-", $"and {items.Count - Shown} more; --json lists all");
    }
}
