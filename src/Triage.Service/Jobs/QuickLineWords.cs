using System.Globalization;
using Triage.Measurements.Parts;
using Triage.Measurements.Readings;

namespace Triage.Service.Jobs;

/// <summary>What was understood of a quick line, in its own order; the line itself is kept as written.</summary>
internal static class QuickLineWords
{
    public static string Of(string text)
    {
        var line = QuickReading.Read(text);
        var placed = line.Pieces.Any(p => p.Kind is QuickKind.Designator or QuickKind.Part or QuickKind.Terminal);
        // how something was found says nothing without what it was
        string[] read = [.. line.Pieces.Where(p => placed || p.Kind is not (QuickKind.Verdict or QuickKind.Condition)).Select(Spoken)];
        return read.Length == 0
            ? "Kept as written; no part, reading, fix or outcome was read from it."
            : $"Read as: {string.Join(", ", read)}.{(line.NotUnderstood.IsEmpty ? "" : $" Not read: {string.Join(", ", line.NotUnderstood.Select(s => $"“{text.Substring(s.Start, s.Length)}”"))}.")}";
    }

    private static string Spoken(QuickPiece piece) => piece.Rating is { } rating ? Spoken(rating) ?? piece.Says : piece.Says;

    /// <summary>"47 µF 16 V", "T 1 A"; null when it says none of that.</summary>
    private static string? Spoken(PartRating rating)
    {
        string?[] said =
        [
            rating.Speed switch
            {
                FuseSpeed.VeryQuick => "FF",
                FuseSpeed.Quick => "F",
                FuseSpeed.Medium => "M",
                FuseSpeed.TimeLag => "T",
                FuseSpeed.LongTimeLag => "TT",
                null => null,
            },
            rating.Value?.ToString(), Amount(rating.Volts, "V"), Amount(rating.Amperes, "A"), Amount(rating.Watts, "W"),
        ];
        return string.Join(' ', said.OfType<string>()) is { Length: > 0 } all ? all : null;
    }

    private static string? Amount(double? amount, string unit) => amount is { } a ? string.Create(CultureInfo.InvariantCulture, $"{a:0.###} {unit}") : null;
}
