using Triage.Workshop;
using Triage.Workshop.Books;

namespace Triage.Cli;

/// <summary>Every text with which the command line refuses something by itself.</summary>
internal static class CommandTexts
{
    public const string Interrupted = "Interrupted. What was recorded before is kept.";

    public static Refusal NoOwnBook { get; } =
        new(RefusalKind.NotAllowed, "None of the open books is one's own.", "Name a folder of your own: --book mine=FOLDER.");

    public static Refusal NoMap { get; } =
        new(RefusalKind.NotUnderstood, "Nobody said which column is what.", "Name a column map with --map FILE; a first one comes from triage import --suggest TABLE > map.json.");

    public static Refusal NoNameToTake { get; } =
        new(RefusalKind.NotUnderstood, "The book has no name yet.", "Say what to call it here: --as NAME.");

    public static Refusal NoTrustToTake { get; } =
        new(RefusalKind.NotUnderstood, "Nobody said how far the book is to be believed.", "Say --trust known for people you know, --trust stranger for anybody else.");

    public static Refusal NoBook(string from) =>
        new(RefusalKind.CannotWrite, $"No bench book was found from {from} upwards.", "Say where it is with --book NAME=FOLDER, or in TRIAGE_BOOKS.");

    public static Refusal BookTwice(string name) =>
        new(RefusalKind.NotUnderstood, $"Two books are called “{name}”.", "Give each its own name: --book NAME=FOLDER.");

    public static Refusal NoFolder(BookSource book) =>
        new(RefusalKind.CannotWrite, $"The folder of book “{book.Name}” is not there: {book.Folder}", "Name another with --book NAME=FOLDER, or create it.");

    public static Refusal Ambiguous(string kind, string typed, IReadOnlyCollection<string> ids) =>
        new(RefusalKind.NotUnderstood, $"“{typed}” could be more than one {kind}.", $"Type more of one of these: {Few(ids)}.");

    public static Refusal NoSuch(string kind, string typed, string? near) =>
        new(RefusalKind.NotFound, $"There is no {kind} “{typed}”.", near is null ? "Look it up with triage find." : $"Did you mean {near}?");

    public static Refusal NoSuchValue(string of, string typed, IEnumerable<string> values) =>
        new(RefusalKind.NotUnderstood, $"“{typed}” is no value of {of}.", $"Its values are {string.Join(", ", values)}.");

    public static Refusal Unreadable(string path, string why) =>
        new(RefusalKind.CannotWrite, $"{path} cannot be read: {why}", "Look whether it is still there and yours to read.");

    public static Refusal NothingToAgree() =>
        new(RefusalKind.NotUnderstood, "No consent was given.", "Say at least one of --spend, --may-erase, --originals-back.");

    public static Refusal NothingTried(string job) =>
        new(RefusalKind.NotFound, $"Job {job} tried no reset and no fix yet.", "Record it first with triage reset or triage fixed.");

    public static Refusal NotInDrawer(string typed) =>
        new(RefusalKind.NotFound, $"Nothing in the drawer goes by “{typed}”.", "Look at the list: triage drawer.");

    public static Refusal NothingCounted() =>
        new(RefusalKind.NotUnderstood, "It was not said what changed.", "Say at least one of --more, --fewer, --tested.");

    public static Refusal NoInstrument(string name) =>
        new(RefusalKind.NotFound, $"No instrument “{name}” is set up.", "Set it up by saying what its sheet says: --kind, --input, --range.");

    public static Refusal NoTool(string tool, IReadOnlyCollection<string> listed) =>
        new(RefusalKind.NotFound, $"No tool “{tool}” is listed.", listed.Count == 0 ? "Nobody listed tools: every one counts as there." : $"Listed are {string.Join(", ", listed)}.");

    public static Refusal NoVersion(string note) =>
        new(RefusalKind.NotUnderstood, "Nobody said which version the text was made from.", $"Name it with --since; triage note {note} --json says it.");

    public static Refusal NoVersionKept(string note, string version) =>
        new(RefusalKind.NotFound, $"No version “{version}” of {note} is kept.", $"Look at the list: triage history {note}.");

    public static Refusal NoOwnerKey { get; } =
        new(RefusalKind.NotFound, "No bench was served for you since you logged in.", "Start it with triage serve; it prints an address that lets you in.");

    public static Refusal NoPort(double port) =>
        new(RefusalKind.NotUnderstood, FormattableString.Invariant($"{port} is no port."), "Choose one from 1024 to 65535, or 0 for any that is free.");

    public static Refusal Unforeseen(Exception e) =>
        new(RefusalKind.CannotWrite, $"The program met something it did not foresee ({e.GetType().Name}): {e.Message.ReplaceLineEndings(" ")}",
            "What was recorded before is kept. Try again; if it stays, run triage check.");

    public static string NotANumber(string typed, string why) => $"“{typed}” is no number: {why}";

    public static string NotADate(string typed) => $"“{typed}” is no date. Write it as 2024-03-09.";

    public static string NotAChoice(string typed, IEnumerable<string> choices) => $"“{typed}” is none of {string.Join(", ", choices)}.";

    private static string Few(IReadOnlyCollection<string> ids) =>
        ids.Count <= 6 ? string.Join(", ", ids) : $"{string.Join(", ", ids.Take(6))} and {ids.Count - 6} more";
}
