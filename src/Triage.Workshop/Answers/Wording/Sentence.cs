namespace Triage.Workshop.Answers.Wording;

/// <summary>Names of notes at the start and in the middle of a sentence.</summary>
public static class Sentence
{
    public static string Upper(string name) => name.Length == 0 ? name : char.ToUpperInvariant(name[0]) + name[1..];

    /// <summary>As it stands when it begins with an abbreviation or a designator.</summary>
    public static string Lower(string name) => name.Length > 1 && char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;
}
