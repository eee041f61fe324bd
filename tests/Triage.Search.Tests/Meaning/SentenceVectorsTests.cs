using Triage.Search.Meaning;

namespace Triage.Search.Tests.Meaning;

/// <summary>What the language model is relied upon for, and that its cache changes nothing.</summary>
public sealed class SentenceVectorsTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("vectors");

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [InlineData("one side is silent", "no sound from the left speaker", "the tape gets chewed up")]
    [InlineData("it eats my tapes", "the tape gets chewed up", "nothing on the display")]
    [InlineData("nothing on the display", "the screen stays black", "the belt has turned to tar")]
    public void The_same_in_other_words_lies_closer_than_something_else(string text, string same, string other)
    {
        var vectors = new SentenceVectors(new RememberedVectors(null)).Of([text, same, other]);

        Assert.True(SentenceVectors.Closeness(vectors[0], vectors[1]) > SentenceVectors.Closeness(vectors[0], vectors[2]) + 0.2);
        Assert.Equal(1, SentenceVectors.Closeness(vectors[0], vectors[0]), 0.001);
    }

    [Fact]
    public void What_was_remembered_is_found_again_after_a_restart_number_for_number()
    {
        string file = Path.Combine(_folder.FullName, "vectors");
        var first = new RememberedVectors(file);
        float[] before = new SentenceVectors(first).Of(["hums", "µ 4n7 Ω"])[1];
        first.Keep();

        var again = new RememberedVectors(file);

        Assert.True(new SentenceVectors(again).Knows(["hums", "µ 4n7 Ω"]));
        Assert.Equal(before, again.Find("µ 4n7 Ω"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("something else\n")]
    [InlineData("sentence vectors, MiniLM L6, 384 half, 1\nhalf a record")]
    public void A_damaged_cache_is_started_anew(string content)
    {
        string file = Path.Combine(_folder.FullName, "vectors");
        File.WriteAllText(file, content);
        var remembered = new RememberedVectors(file);

        Assert.Null(remembered.Find("hums"));
        _ = new SentenceVectors(remembered).Of(["hums"]);
        remembered.Keep();

        Assert.NotNull(new RememberedVectors(file).Find("hums"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("a\0b\ud800")]
    [InlineData("😀 日本語 ошибка")]
    public void Any_text_has_a_vector(string text) =>
        Assert.Equal(SentenceVectors.Width, new SentenceVectors(new RememberedVectors(null)).Of([text])[0].Length);
}
