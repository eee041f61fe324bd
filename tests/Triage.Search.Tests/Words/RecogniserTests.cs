using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Search.Words;

namespace Triage.Search.Tests.Words;

public sealed class RecogniserTests
{
    private static readonly Recogniser Recogniser = Recogniser.Build(WordCases.Vocabulary());

    [Theory]
    [InlineData("power lamp lit, nothing on the display, no sound")]
    [InlineData("I think the display is dim, but (oddly) the trackpad jumps. Changed the battery, no difference!")]
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
        Assert.Contains(Recogniser.Recognise("chews up the tape", "cassette-deck").Findings, f => f.Finding == "tape-eaten");
        Assert.DoesNotContain(Recogniser.Recognise("chews up the tape").Findings, f => f.Finding == "tape-eaten");
        Assert.DoesNotContain(Recogniser.Recognise("chews up the tape", "radio-set").Findings, f => f.Finding == "tape-eaten");
    }

    /// <summary>Ours: what is said of the whole machine, of a part of it and of a part's part.</summary>
    [Theory]
    [InlineData("the radio does not work", "works-at-all", "not-working")]
    [InlineData("tabletop radio broken", "works-at-all", "not-working")]
    [InlineData("it does not work properly", "works-at-all", "not-working")]
    [InlineData("power on but not working properly", "works-at-all", "not-working")]
    [InlineData("the volume switch does not work", null, null)]
    [InlineData("I turn it off and then turn it back on", null, null)]
    [InlineData("power button faulty", null, null)]
    [InlineData("it only works intermittently", "stops", "yes")]
    [InlineData("sometimes it comes on", "stops", "yes")]
    [InlineData("the switch works intermittently", null, null)]
    public void What_is_said_of_the_machine_is_told_from_what_is_said_of_a_part(string words, string? finding, string? value)
    {
        var radio = new DeviceClass("radio-set", "Radio set") { Also = ["radio", "table radio", "tabletop radio"] };
        ImmutableArray<Finding> findings =
        [
            new("works-at-all", "How far it works") { Values = [Value("works", "works again"), Value("not-working", "does not work", "broken", "faulty"), Value("dead", "dead", "no power", "nothing works at all")] },
            new("receives", "Receives") { Values = [Value("normal", "receives well", "radio works"), Value("none", "radio does not work", "no stations")], Classes = ["radio-set"] },
            new("sound", "Sound") { Values = [Value("normal", "sound is fine"), Value("none", "no sound", "no volume")] },
            new("stops", "Comes and goes") { Values = [Value("no", "never stops"), Value("yes", "cuts out", "turns off when turned up")] },
        ];
        var read = Recogniser.Build(findings, machines: [radio]).Recognise(words, "radio-set").Findings;
        Assert.Equal(finding is null ? [] : [(finding, value!)], read.Select(f => (f.Finding, f.Value)));

        static FindingValue Value(string id, params string[] says) => new(id, id, [.. says], null);
    }

    /// <summary>Ours: asked, hoped, told of others.</summary>
    [Theory]
    [InlineData("do these hum on the mains normally?")]
    [InlineData("I hope it won't hum like my cousin's")]
    [InlineData("I was told it might hum")]
    [InlineData("it isn't that it hums")]
    public void What_is_asked_hoped_or_told_of_others_states_nothing(string words)
    {
        var read = Recogniser.Build([new Finding("hum", "hums")]).Recognise(words);
        Assert.Empty(read.Findings);
        Assert.NotEmpty(read.NotUnderstood);
    }

    [Fact]
    public void A_question_that_is_none_is_read() =>
        Assert.Single(Recogniser.Build([new Finding("hum", "hums")]).Recognise("It hums, can you help?").Findings);

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
