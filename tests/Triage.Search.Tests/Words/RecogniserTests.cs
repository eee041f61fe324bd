using Triage.Notes.Kinds;
using Triage.Search.Words;

namespace Triage.Search.Tests.Words;

public sealed class RecogniserTests
{
    private static readonly Recogniser Recogniser = Recogniser.Build(WordCases.Vocabulary());

    [Theory]
    [InlineData("power lamp lit, nothing on the display, no sound")]
    [InlineData("I think the drive spins, but (oddly) the trackpad jumps. Changed the battery, no difference!")]
    [InlineData("Neither the screen nor the headphone socket works, sometimes hums when hot")]
    public void EverySpan_IsTheWordsItSays(string text)
    {
        var read = Recogniser.Recognise(text);
        Assert.NotEmpty(read.Findings);
        Assert.All(read.Findings, f => Assert.Equal(f.Span.Of(text), f.Words));
        Assert.All(read.NotUnderstood, p => Assert.Equal(p.Span.Of(text), p.Words));
        Assert.All(read.Tried, t => Assert.Equal(t.Span.Of(text), t.Words));
    }

    [Fact]
    public void RecognisedFinding_ShowsTheWordsItCameFrom()
    {
        var read = Recogniser.Recognise("power lamp lit, nothing on the display, no sound");
        Assert.Equal(["power lamp lit", "nothing on the display", "no sound"], read.Findings.Select(f => f.Words));
    }

    [Fact]
    public void FindingOfAnotherClass_IsLeftOut()
    {
        Assert.Contains(Recogniser.Recognise("chews up the tape").Findings, f => f.Finding == "tape-eaten");
        Assert.DoesNotContain(Recogniser.Recognise("chews up the tape", "radio-set").Findings, f => f.Finding == "tape-eaten");
    }

    [Fact]
    public void ClassThatNoFindingNames_StillHasTheGeneralOnes()
    {
        var read = Recogniser.Recognise("no sound, chews up the tape", "camera");
        Assert.Equal(["sound"], read.Findings.Select(f => f.Finding));
    }

    [Fact]
    public void GuessedWords_AreLessSureThanWrittenOnes()
    {
        double Sure(string text) => Assert.Single(Recogniser.Recognise(text).Findings).Confidence;
        Assert.True(Sure("nothing on the display") > Sure("nothing on the dispaly"));
        Assert.True(Sure("strange characters on the display") > Sure("on the display strange old characters"));
    }

    [Fact]
    public void PlainFinding_IsReadByItsName()
    {
        var plain = Recogniser.Build([new Finding("rattle", "rattles")]);
        Assert.Equal("yes", Assert.Single(plain.Recognise("it rattles").Findings).Value);
        Assert.Equal("no", Assert.Single(plain.Recognise("it does not rattle").Findings).Value);
    }

    [Fact]
    public void NominalFinding_HasNoOppositeToDeny()
    {
        var blink = new Finding("blink-code", "Blink code")
        {
            Nominal = true,
            Values = [new("two", "blinks twice", [], null), new("three", "blinks three times", [], null)],
        };
        Assert.Equal("three", Assert.Single(Recogniser.Build([blink]).Recognise("blinks three times").Findings).Value);
        Assert.Empty(Recogniser.Build([blink]).Recognise("does not blink three times").Findings);
    }

    [Fact]
    public void HundredKilobytes_AreReadInPartAndSaid()
    {
        var text = string.Concat(Enumerable.Repeat("no sound and nothing on the display ", 3_000));
        var read = Recogniser.Recognise(text);
        Assert.Equal(SearchTexts.ComplaintCut(20_000, text.Length), read.Notice);
        Assert.Equal(["sound", "display"], read.Findings.Select(f => f.Finding));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   \n")]
    [InlineData("\ud83c no \udfb9 sound")]
    [InlineData("'''''' ,,,,, ----- no no no not not neither nor nor")]
    [InlineData("sound sound sound sound sound display display display screen screen no no not")]
    public void OddText_IsReadWithoutFailing(string text)
    {
        var read = Recogniser.Recognise(text);
        Assert.All(read.Findings, f => Assert.Equal(f.Span.Of(text), f.Words));
    }
}
