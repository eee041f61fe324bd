using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

internal static class WriteChance
{
    /// <summary>A word or a number; with what stands behind it where that is not the usual.</summary>
    public static YamlValue Of(Chance chance)
    {
        var word = chance.Word is { } w && FrequencyWords.Find(w)?.Probability == chance.Probability ? w : null;
        var p = word is null ? YamlValue.Of(chance.Probability) : YamlValue.Of(word);
        var usual = word is null ? FrequencyWords.NumberWeight : FrequencyWords.WordWeight;
        return chance.Source is null && chance.Weight == usual
            ? p
            : new FieldWriter().Value("p", p).Value("jobs", Weight(chance.Weight, usual)).Text("source", chance.Source).OnOneLine;
    }

    private static YamlValue? Weight(double weight, double usual) =>
        weight == usual ? null : double.IsPositiveInfinity(weight) ? YamlValue.Of("exactly") : YamlValue.Of(weight);
}
