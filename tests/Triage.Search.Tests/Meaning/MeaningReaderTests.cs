using Triage.Notes;
using Triage.Notes.Kinds;
using Triage.Search.Meaning;
using Triage.Search.Words;

namespace Triage.Search.Tests.Meaning;

/// <summary>What the meaning of sentences may add to their words, and what it may not, on the common findings.</summary>
[Trait("run", "long")]
public sealed class MeaningReaderTests(ITestOutputHelper output)
{
    private static readonly List<Finding> Findings = [.. BookReader.Read("common", Path.Combine(Root(AppContext.BaseDirectory), "kb", "common")).Notes.OfType<Finding>()];

    private static readonly Recogniser Recogniser = Recogniser.Build(Findings, new SentenceVectors(new RememberedVectors(null)));

    [Theory]
    [InlineData("audio-amplifier", "there's a stench like a bonfire in there", "burnt-smell", "yes")]
    [InlineData("cassette-deck", "my tapes come back as spaghetti", "chews-tape", "yes")]
    [InlineData("radio-set", "the station drifts away after a bit", "tuning-drifts", "yes")]
    public void Wording_that_no_phrasing_has_is_understood_and_marked(string kind, string complaint, string finding, string value)
    {
        var found = Assert.Single(Recogniser.Recognise(complaint, kind).Findings, f => f.Finding == finding);
        Assert.Equal(value, found.Value);
        Assert.Contains(found.Words, complaint, StringComparison.Ordinal);
    }

    /// <summary>A word that the notes list is understood when it is all that somebody says.</summary>
    [Theory]
    [InlineData("radio-set", "hums", "hum", "yes")]
    [InlineData("radio-set", "DEAD", "works-at-all", "dead")]
    [InlineData("radio-set", "crackles", "crackle", "yes")]
    [InlineData("audio-amplifier", "distorts", "sound", "distorted")]
    [InlineData("cassette-deck", "silent", "sound", "none")]
    [InlineData("record-player", "wobbles", "wow", "yes")]
    [InlineData("radio-set", "AM is dead", "receives", "one-band-only")]
    public void One_word_is_enough_where_it_is_all_that_is_said(string kind, string complaint, string finding, string value) =>
        Assert.Contains(Recogniser.Recognise(complaint, kind).Findings, f => (f.Finding, f.Value) == (finding, value));

    /// <summary>The model hears "display" and not "fine", and "slow" as "fast".</summary>
    [Theory]
    [InlineData("electronic-keyboard", "the display is perfectly fine", "display", "blank")]
    [InlineData("cassette-deck", "it has never once eaten a tape", "chews-tape", "yes")]
    [InlineData("audio-amplifier", "there is no burning smell at all", "burnt-smell", "yes")]
    [InlineData("radio-set", "the sound is lovely and clear", "sound", "none")]
    [InlineData("record-player", "turns too slow", "runs-fast", "yes")]
    [InlineData("camera-motor", "shutter sounds normal", "shutter-sticks", "yes")]
    public void What_is_denied_or_fine_is_not_turned_into_a_fault(string kind, string complaint, string finding, string fault) =>
        Assert.DoesNotContain(Recogniser.Recognise(complaint, kind).Findings, f => f.Finding == finding && f.Value == fault);

    [Theory]
    [InlineData("electronic-keyboard", "sounds like it is not there")]
    [InlineData("flat-display", "the picture is as it should be")]
    [InlineData("radio-set", "all the bands work and the dial moves")]
    public void That_something_is_normal_is_only_taken_from_words(string kind, string complaint)
    {
        var normal = Findings.Where(f => !f.Nominal).ToDictionary(f => f.Id, f => f.Values.IsEmpty ? "no" : f.Values[0].Id);
        Assert.DoesNotContain(Recogniser.Recognise(complaint, kind).Findings, f => f.ByMeaning && normal.GetValueOrDefault(f.Finding) == f.Value);
    }

    /// <summary>Talk that is not of a machine at all, said of each of six classes; at most one sentence in ten is taken for a finding.</summary>
    [Fact]
    public void Talk_of_other_things_is_hardly_ever_taken_for_a_finding()
    {
        string[] talk =
        [
            "Beat two eggs with the sugar until pale.", "Fold in the flour and bake for half an hour.", "The train to the coast leaves at nine.",
            "My sister keeps bees behind the chapel.", "We had snow in April this year.", "The invoice goes to the office in town.",
            "Please ring after six, I am at work until then.", "Roses need cutting back in spring.", "The river was over the meadow again.",
            "He reads the paper in the garden.", "Das Wetter war gestern sehr schön.", "Les enfants jouent dans le jardin.",
            "Three goals in the second half and then it rained.", "The cat sleeps on the windowsill.", "She sings in the choir on Thursdays.",
            "Could you send me the address of the shop?", "I will pick it up on Saturday morning.", "It belonged to my grandfather.",
            "Thank you for your kind letter.", "The museum is closed on Mondays.", "There is a dog, but it is friendly.",
            "Parking is behind the house.", "He paid forty for it at a jumble sale.", "The manual is in the box.", "It has great sentimental value.",
        ];
        string[] kinds = ["audio-amplifier", "cassette-deck", "electronic-keyboard", "flat-display", "portable-computer", "radio-set"];
        var taken = kinds.SelectMany(k => talk.Select(t => (Kind: k, Talk: t, Found: Recogniser.Recognise(t, k).Findings))).Where(t => !t.Found.IsEmpty).ToList();
        foreach (var (kind, words, found) in taken)
            output.WriteLine($"{kind}: {words} → {string.Join(" ", found.Select(f => $"{f.Finding}={f.Value} {(f.ByMeaning ? "by meaning" : "by words")}"))}");
        Assert.InRange((double)taken.Count / (kinds.Length * talk.Length), 0, 0.1);
    }

    private static string Root(string folder) =>
        File.Exists(Path.Combine(folder, "Triage.sln")) ? folder : Root(Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("no Triage.sln above the tests"));
}
