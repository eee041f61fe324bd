using Triage.Notes.Kinds;
using Triage.Workshop.Knowledge;

namespace Triage.Service.Shown;

/// <summary>A part of a device in words, and where words speak of it.</summary>
internal static class PartWords
{
    public static string Of(DevicePart part, Notebook notes) =>
        string.Join(", ", new[] { notes.Find<PartClass>(part.Part)?.Name ?? part.Part, part.Role?.Replace('-', ' '), part.Rating, part.Where }.OfType<string>());

    /// <summary>Whether the designator stands in the text as a word of its own: C1 is not in C14.</summary>
    public static bool Mentions(string? text, string designator)
    {
        for (var at = text?.IndexOf(designator, StringComparison.OrdinalIgnoreCase) ?? -1; at >= 0; at = text!.IndexOf(designator, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            var end = at + designator.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text![at - 1])) && (end == text!.Length || !char.IsLetterOrDigit(text[end])))
                return true;
        }

        return false;
    }
}
