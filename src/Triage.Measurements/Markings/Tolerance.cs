using System.Collections.Frozen;

namespace Triage.Measurements.Markings;

/// <summary>A tolerance in percent of the value.</summary>
/// <param name="Minus">How far below, as a positive number.</param>
/// <param name="Plus">How far above.</param>
public readonly record struct Tolerance(double Minus, double Plus)
{
    /// <summary>Letters of IEC 60062, values above 10 pF for capacitors (from memory).</summary>
    private static readonly FrozenDictionary<char, Tolerance> Letters = new Dictionary<char, Tolerance>
    {
        ['E'] = Even(0.005), ['L'] = Even(0.01), ['P'] = Even(0.02), ['W'] = Even(0.05), ['B'] = Even(0.1), ['C'] = Even(0.25), ['D'] = Even(0.5),
        ['F'] = Even(1), ['G'] = Even(2), ['H'] = Even(3), ['J'] = Even(5), ['K'] = Even(10), ['M'] = Even(20), ['N'] = Even(30),
        ['Q'] = new(10, 30), ['T'] = new(10, 50), ['S'] = new(20, 50), ['Z'] = new(20, 80),
    }.ToFrozenDictionary();

    public static Tolerance Even(double percent) => new(percent, percent);

    /// <summary>Null for a letter that names no tolerance.</summary>
    public static Tolerance? OfLetter(char letter) => Letters.TryGetValue(letter, out var tolerance) ? tolerance : null;

    /// <summary>The letter to print; null when none stands for it.</summary>
    public char? Letter()
    {
        var wanted = this;
        return Letters.Where(l => l.Value == wanted).Select(l => (char?)l.Key).FirstOrDefault();
    }
}
