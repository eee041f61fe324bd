namespace Triage.Workshop.Keeping;

/// <summary>A backup is not made or not restored, and why.</summary>
internal sealed class KeepingRefusedException(Refusal refusal) : Exception(refusal.ToString())
{
    public Refusal Refusal => refusal;
}

/// <summary>Every text with which backing up and restoring say that something is wrong.</summary>
internal static class KeepingTexts
{
    private const string NothingRestored = "Nothing was restored.";

    public static Refusal PlaceTaken(string place) => new(RefusalKind.NotAllowed, $"{place} is there already, and is never overwritten.", "Nothing was written. Name a place that is not there yet.");

    public static Refusal InsideBook(string place) => new(RefusalKind.NotAllowed, $"{place} lies inside a book.", "Nothing was written. Name a place outside of it.");

    public static Refusal CannotWrite(string place, Exception e) => new(RefusalKind.CannotWrite, $"Cannot write {place}: {e.Message}", "Nothing is left half done. Look for a full disk or a read-only folder, then try again.");

    public static Refusal CannotLook(string folder, Exception e) => new(RefusalKind.CannotWrite, $"{folder} cannot be looked over: {e.Message}", "Look who may read it, then try again.");

    public static Refusal CannotRead(string from, Exception e) => new(RefusalKind.NotFound, $"{from} cannot be read: {e.Message}", $"{NothingRestored} Look at the name and at who may read it.");

    public static Refusal NoBackup(string from) => new(RefusalKind.NotUnderstood, $"{from} is no whole backup: it is no zip, or was cut.", $"{NothingRestored} Take another backup.");

    public static Refusal NoManifest(string from) => new(RefusalKind.NotUnderstood, $"{from} holds no sound {Manifest.Name}, so it is no backup of a bench.", $"{NothingRestored} A book given out is taken with triage take.");

    public static Refusal Damaged(string path) =>
        new(RefusalKind.NotUnderstood, $"“{path}” in the backup is damaged: it is not what was put in.", $"{NothingRestored} Take another backup; or unpack this one by hand, and leave that file out.");

    public static Refusal Missing(string path) => new(RefusalKind.NotUnderstood, $"“{path}” is missing in the backup.", $"{NothingRestored} Take another backup; or unpack this one by hand.");

    public static Refusal NotListed(string path) => new(RefusalKind.NotAllowed, $"“{path}” was put into the backup afterwards: its manifest does not list it.", $"{NothingRestored} Do not trust this file.");

    public static Refusal LeadsOut(string path) => new(RefusalKind.NotAllowed, $"The backup holds the name “{path}”, which leads out of the folder it would be restored to.", $"{NothingRestored} Do not trust this file.");

    public static Refusal Link(string path) => new(RefusalKind.NotAllowed, $"“{path}” in the backup is a link to another place.", $"{NothingRestored} Do not trust this file.");

    public static Refusal Swells(string from, long bytes) => new(RefusalKind.NotAllowed, FormattableString.Invariant($"{from} would swell to {bytes} bytes, over 200 times its size."), $"{NothingRestored} Do not trust this file.");

    public static Refusal TooMany(string from, int files) => new(RefusalKind.NotAllowed, FormattableString.Invariant($"{from} holds {files:N0} files, more than a book has."), $"{NothingRestored} Do not trust this file.");

    public static Refusal NoRoom(string folder, long needed, long free) =>
        new(RefusalKind.CannotWrite, FormattableString.Invariant($"The book needs {needed / 1e6:N1} MB and {folder} has {free / 1e6:N1} MB left."), $"{NothingRestored} Make room, or name a folder on another disk.");
}
