using Triage.Notes;

namespace Triage.Workshop.Keeping;

/// <summary>What can be wrong with a file that was right once, and what to do.</summary>
internal static class DamageTexts
{
    private const string FromBackup = "Take it from a backup.";

    private const string IfMeant = "If it is meant, say so with triage verify --accept.";

    public static (string What, string Instead) Rotten() =>
        ("It is not what was written, and nobody edited it: its length and time are as they were.", $"{FromBackup} Look after the disk: it may be failing.");

    public static (string What, string Instead) CannotRead(string why) => ($"It cannot be read: {why}", "Look who may read it, and after the disk: it may be failing.");

    public static (string What, string Instead) Cut() => ("It is no whole photo or drawing: its end is missing.", FromBackup);

    public static (string What, string Instead) Other() => ("It is not the photo or drawing that was kept under this name.", $"{FromBackup} {IfMeant}");

    public static (string What, string Instead) Unreadable(Problem wrong) => ($"It was a sound note and cannot be used any more: {wrong.What}", "Mend it, or bring back what it said before with triage history.");

    public static (string What, string Instead) IdLost(string id) => ($"It was note {id}, and no note has that id any more.", $"Give it back, or add formerly: [{id}]. {IfMeant}");

    public static (string What, string Instead) Shorter(int now, int was) =>
        (FormattableString.Invariant($"Its log has {now} {(now == 1 ? "entry" : "entries")}, and had {was} when it was last saved."), $"See what it said before with triage history. {IfMeant}");

    public static (string What, string Instead) Gone(string id) => ($"The file of note {id} is gone.", $"{FromBackup} {IfMeant}");
}
