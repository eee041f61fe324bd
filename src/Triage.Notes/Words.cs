namespace Triage.Notes;

/// <summary>The words that notes write for the members of an enumeration: lower case, hyphens between words.</summary>
public static class Words
{
    /// <summary><c>TestedGood</c> is written <c>tested-good</c>.</summary>
    public static string Of<T>(T value)
        where T : struct, Enum => Table<T>.ByValue[value];

    /// <summary>The member that a word stands for; null when none.</summary>
    public static T? Find<T>(string word)
        where T : struct, Enum => Table<T>.ByWord.TryGetValue(word, out var value) ? value : null;

    /// <summary>All words, in the order of the enumeration.</summary>
    public static IReadOnlyList<string> All<T>()
        where T : struct, Enum => Table<T>.InOrder;

    private static string Hyphenated(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) && i > 0 ? $"-{char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));

    private static class Table<T>
        where T : struct, Enum
    {
        public static readonly Dictionary<T, string> ByValue = Enum.GetValues<T>().ToDictionary(v => v, v => Hyphenated(v.ToString()));

        public static readonly Dictionary<string, T> ByWord = ByValue.ToDictionary(p => p.Value, p => p.Key);

        public static readonly string[] InOrder = [.. Enum.GetValues<T>().Select(v => ByValue[v])];
    }
}
