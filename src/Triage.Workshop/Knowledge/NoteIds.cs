using System.Globalization;
using System.Text;

namespace Triage.Workshop.Knowledge;

/// <summary>Ids from words.</summary>
internal static class NoteIds
{
    private const int Longest = 60;

    /// <summary>Lower case letters, digits and hyphens.</summary>
    /// <param name="otherwise">The id when nothing of the words is left.</param>
    public static string From(string words, string otherwise = "fault")
    {
        var id = new StringBuilder();
        foreach (var c in words.Normalize(NormalizationForm.FormD).ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(c))
                id.Append(c);
            else if (id.Length > 0 && id[^1] != '-' && !char.IsSurrogate(c) && char.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark)
                id.Append('-');
        }

        var trimmed = id.ToString(0, Math.Min(id.Length, Longest)).Trim('-');
        return trimmed.Length == 0 ? otherwise : trimmed;
    }

    /// <summary>The id after this one: its last number and one more, as wide as it was.</summary>
    public static string Next(string id)
    {
        var digits = id.Reverse().TakeWhile(char.IsAsciiDigit).Count();
        return digits is > 0 and < 10
            ? id[..^digits] + (long.Parse(id[^digits..], CultureInfo.InvariantCulture) + 1).ToString($"D{digits}", CultureInfo.InvariantCulture)
            : id + "-2";
    }
}
