using System.Collections.Frozen;

namespace Triage.Measurements.Quantities;

/// <summary>What instruments show and people write in place of a number.</summary>
internal static class SpokenValues
{
    private static readonly FrozenDictionary<string, MeasuredValue> Words = new Dictionary<string, MeasuredValue>
    {
        ["ol"] = MeasuredValue.OverRange(),
        ["0l"] = MeasuredValue.OverRange(),
        ["o.l"] = MeasuredValue.OverRange(),
        ["0.l"] = MeasuredValue.OverRange(),
        ["ofl"] = MeasuredValue.OverRange(),
        ["1."] = MeasuredValue.OverRange(), // a lone 1 at the left, on older liquid-crystal displays
        ["open"] = MeasuredValue.OverRange(),
        ["overload"] = MeasuredValue.OverRange(),
        ["over range"] = MeasuredValue.OverRange(),
        ["out of range"] = MeasuredValue.OverRange(),
        ["infinite"] = MeasuredValue.OverRange(),
        ["∞"] = MeasuredValue.OverRange(),
        ["unknown part"] = MeasuredValue.UnknownPart,
        ["unknown"] = MeasuredValue.UnknownPart,
        ["no part"] = MeasuredValue.UnknownPart,
        ["unknown or damaged part"] = MeasuredValue.UnknownPart,
        ["no, unknown or damaged part"] = MeasuredValue.UnknownPart,
        [""] = MeasuredValue.None,
        ["none"] = MeasuredValue.None,
        ["no reading"] = MeasuredValue.None,
        ["not measured"] = MeasuredValue.None,
        ["-"] = MeasuredValue.None,
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    public static MeasuredValue? Read(string text) =>
        Words.GetValueOrDefault(string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
}
