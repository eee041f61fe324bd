namespace Triage.Workshop.Exchange;

/// <summary>Nothing is taken or given out, and why.</summary>
internal sealed class SharingRefusedException(Refusal refusal) : Exception(refusal.ToString())
{
    public Refusal Refusal => refusal;
}

/// <summary>Every text with which taking and giving out say that something is wrong.</summary>
internal static class SharingTexts
{
    private const string NothingTaken = "Nothing was taken.";

    public static Refusal NoZip(string from) => new(RefusalKind.NotUnderstood, $"{from} is neither a folder nor a sound zip file.", $"{NothingTaken} Ask for it again, or unpack it and name the folder.");

    public static Refusal CannotRead(string from, Exception e) => new(RefusalKind.NotFound, $"{from} cannot be read: {e.Message}", $"{NothingTaken} Look at the name and at who may read it.");

    public static Refusal LeadsOut(string path) => new(RefusalKind.NotAllowed, $"The zip holds the name “{path}”, which leads out of the folder it would be unpacked to.", $"{NothingTaken} Do not trust this file.");

    public static Refusal Link(string path) => new(RefusalKind.NotAllowed, $"“{path}” is a link to another place.", $"{NothingTaken} Ask for a copy with the file itself in its place.");

    public static Refusal Swells(string path, long bytes) => new(RefusalKind.NotAllowed, FormattableString.Invariant($"“{path}” would swell to {bytes} bytes, over 200 times its size in the zip."), $"{NothingTaken} Do not trust this file.");

    public static Refusal SwellsInAll(string from, long bytes) => new(RefusalKind.NotAllowed, FormattableString.Invariant($"{from} would swell to {bytes} bytes, over 30 times its size."), $"{NothingTaken} Do not trust this file.");

    public static Refusal TooLarge(string from, string path) => new(RefusalKind.NotAllowed, $"{from} is too large at “{path}”: 100 MB a file, 4 GB and 500,000 files in all are taken.", $"{NothingTaken} Ask for the notes and photos alone.");

    public static Refusal NameTwice(string path) => new(RefusalKind.NotAllowed, $"Two files are called “{path}”, capitals aside.", $"{NothingTaken} Ask for it again with different names.");

    public static Refusal Locked(string from) => new(RefusalKind.NotUnderstood, $"{from} is locked with a password.", $"{NothingTaken} Unpack it first and name the folder.");

    public static Refusal Damaged(string path) => new(RefusalKind.NotUnderstood, $"“{path}” is damaged or not as long as announced.", $"{NothingTaken} Ask for it again.");

    public static Refusal NoNotes(string from) => new(RefusalKind.NotUnderstood, $"{from} holds no note that can be read and used.", $"{NothingTaken} A book is a folder of Markdown notes; kb/FORMAT.md says how one is written.");

    public static Refusal BadName(string name) => new(RefusalKind.NotUnderstood, $"“{name}” is no name for a book.", "Use lower case letters, digits and hyphens.");

    public static Refusal NameTaken(string name) => new(RefusalKind.NotAllowed, $"A book called “{name}” is open already.", $"Choose another name, or take the old one away first: triage take --remove {name}");

    public static Refusal NotTaken(string name, IEnumerable<string> names) => new(RefusalKind.NotFound, $"No book “{name}” was taken.", names.Any() ? $"Taken are {string.Join(", ", names)}." : "None was taken yet.");

    public static Refusal CannotWrite(string folder, Exception e) => new(RefusalKind.CannotWrite, $"Cannot write in {folder}: {e.Message}", "Nothing was changed. Look for a full disk or a read-only folder, then try again.");

    public static Refusal PlaceTaken(string place) => new(RefusalKind.NotAllowed, $"{place} is there already.", "Nothing was written. Name a place that is not there yet.");

    public static Refusal InsideBook(string place) => new(RefusalKind.NotAllowed, $"{place} lies inside the book that is given out.", "Nothing was written. Name a place outside it.");
}
