namespace Triage.Search;

/// <summary>What this project says to people, in one place.</summary>
public static class SearchTexts
{
    public const string NoWords = "There are no words or numbers in that. Type what the machine does, or a marking such as C14.";

    public const string OtherScript = "These words are not in letters that the notes are written in; what was typed is kept as it is.";

    public const string Damaged = "The stored index was damaged; it was thrown away and has to be filled again from the notes.";

    public const string Outdated = "The stored index was made by another version; it was thrown away and has to be filled again from the notes.";

    public static string QueryCut(int kept, int length) =>
        FormattableString.Invariant($"Only the first {kept} of {length} characters were searched for. Shorten the question.");

    public static string WordsCut(int kept) =>
        FormattableString.Invariant($"Only the first {kept} different words were searched for. Shorten the question.");

    public static string ComplaintCut(int kept, int length) =>
        FormattableString.Invariant($"Only the first {kept} of {length} characters were read for findings; the rest is kept as written.");

    public static string InUse(string folder) =>
        $"The index in {folder} is open in another process. Close that one, or keep the index in another folder.";
}
