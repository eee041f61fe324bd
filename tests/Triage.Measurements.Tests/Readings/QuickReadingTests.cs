using FsCheck.Xunit;
using Triage.Measurements.Quantities;
using Triage.Measurements.Readings;
using Xunit;

namespace Triage.Measurements.Tests.Readings;

public class QuickReadingTests
{
    [Theory]
    [InlineData("C14 short, 47/16, plays", "Designator C14|Verdict shorted|Rating 47/16|Outcome works", "")]
    [InlineData("IC3 pin 8 4.9V ok", "Designator IC3|Terminal pin 8|Reading 4.9 V|Verdict ok", "")]
    [InlineData("Q7 b-e 0.02, shorted", "Designator Q7|Terminal b-e|Reading 20 mV|Verdict shorted", "")]
    [InlineData("F1 open, T1A, fitted new, blows again", "Designator F1|Verdict open|Rating T1A|Action fitted new|Outcome failed again", "")]
    [InlineData("belt gone to tar, new one, runs", "Part belt|Verdict turned to tar|Action fitted new|Outcome works", "")]
    [InlineData("swapped C7 470/25, no difference", "Action swapped|Designator C7|Rating 470/25|Outcome no difference", "")]
    [InlineData("12V rail reads 11.2 under load", "Terminal 12 V rail|Reading 11.2 V|Condition under load", "")]
    [InlineData("12 V rail reads 11.2", "Terminal 12 V rail|Reading 11.2 V", "")]
    [InlineData("r12 10k reads 1,4 MΩ one leg lifted", "Designator R12|Rating 10k|Reading 1.4 MΩ|Condition out of circuit", "")]
    [InlineData("C9 4n7 leaky", "Designator C9|Rating 4n7|Verdict leaky", "")]
    [InlineData("D3 a-k OL both ways", "Designator D3|Terminal a-k|Reading OL", "both ways")]
    [InlineData("C3 esr 12 ohm, dried out", "Designator C3|Condition series resistance|Reading 12 Ω|Verdict dried out", "")]
    [InlineData("Q2 not shorted, does not work", "Designator Q2|Verdict not shorted|Outcome does not work", "")]
    [InlineData("TR3 c-e short 0.3 ohm", "Designator TR3|Terminal c-e|Verdict shorted|Reading 300 mΩ", "")]
    [InlineData("R5 47 Ω measures 51 Ω", "Designator R5|Rating 47 Ω|Reading 51 Ω", "")]
    [InlineData("C8 470 uF 16V, 2 ohm, esr 3.2 ohm", "Designator C8|Rating 470 uF|Rating 16V|Reading 2 Ω|Condition series resistance|Reading 3.2 Ω", "")]
    [InlineData("ZD1 5V1 reads 4.9 V", "Designator ZD1|Rating 5V1|Reading 4.9 V", "")]
    [InlineData("R1 100R 1/4W open", "Designator R1|Rating 100R|Rating 1/4W|Verdict open", "")]
    [InlineData("-12V line -11.8", "Terminal -12 V rail|Reading -11.8 V", "")]
    [InlineData("swapped IC2 -> no joy", "Action swapped|Designator IC2|Outcome no difference", "")]
    [InlineData("fuse blown 1A slow, new one holds", "Part fuse|Verdict blown|Rating 1A slow|Action fitted new|Outcome works", "")]
    [InlineData("F2 500 mA fast blown", "Designator F2|Rating 500 mA fast|Verdict blown", "")]
    [InlineData("plays until power goes", "Outcome works with a limit", "until power goes")]
    [InlineData("BT1 0.1/5.5 leaked", "Designator BT1|Rating 0.1/5.5|Verdict leaked", "")]
    [InlineData("Q7 tester says unknown part", "Designator Q7|Reading unknown part", "tester")]
    [InlineData("\U0001F4A5 strange smell", "", "\U0001F4A5 strange smell")]
    [InlineData("", "", "")]
    public void Read_Line_SaysWhatWasUnderstoodAndWhatNot(string line, string pieces, string rest)
    {
        var read = QuickReading.Read(line);
        Assert.Equal(pieces, string.Join('|', read.Pieces.Select(p => $"{p.Kind} {p.Says}")));
        Assert.Equal(rest, string.Join('|', read.NotUnderstood.Select(s => s.Of(line))));
    }

    [Fact]
    public void Read_TradeShorthand_IsMicrofaradsAndVolts()
    {
        var rating = Assert.Single(QuickReading.Read("C14 short, 47/16, plays").Of(QuickKind.Rating)).Rating;
        Assert.Equal((new Quantity(47e-6, Unit.Farad), 16.0), (rating!.Value!.Value, rating.Volts!.Value));
    }

    [Fact]
    public void Read_Piece_PointsAtItsWords()
    {
        const string line = "F1 open, T1A, fitted new, blows again";
        Assert.Equal(["F1", "open", "T1A", "fitted new", "blows again"], QuickReading.Read(line).Pieces.Select(p => p.Span.Of(line)));
    }

    [Fact]
    public void Read_Rail_BecomesALoadedVoltageReading() =>
        Assert.Equal(
            new Reading("12 V rail", null, ReadingMode.DcVolts, MeasuredValue.Of(11.2, Unit.Volt)) { Load = LoadState.Loaded },
            Assert.Single(QuickReading.Read("12V rail reads 11.2 under load").Readings));

    [Fact]
    public void Read_Junction_BecomesADiodeDropBetweenItsEnds() =>
        Assert.Equal(
            new Reading("Q7 b", "Q7 e", ReadingMode.DiodeDrop, MeasuredValue.Of(0.02, Unit.Volt)),
            Assert.Single(QuickReading.Read("Q7 b-e 0.02, shorted").Readings));

    [Fact]
    public void Read_Pin_BecomesAVoltageAtThatPin() =>
        Assert.Equal(
            new Reading("IC3 pin 8", null, ReadingMode.DcVolts, MeasuredValue.Of(4.9, Unit.Volt)),
            Assert.Single(QuickReading.Read("IC3 pin 8 4.9V ok").Readings));

    [Fact]
    public void Read_SeriesResistance_IsAModeOfTheValueBesideIt() =>
        Assert.Equal(ReadingMode.SeriesResistance, Assert.Single(QuickReading.Read("C8 470uF esr 3.2 ohm").Readings).Mode);

    [Fact]
    public void Read_SeveralPlaces_EachValueKeepsItsOwn() =>
        Assert.Equal(
            ["Q7 b → Q7 e 650 mV", "Q7 b → Q7 c OL", "5 V rail →  4.2 V"],
            QuickReading.Read("Q7 b-e 0.65, b-c OL, 5V rail 4.2").Readings.Select(r => $"{r.From} → {r.To} {r.Value}"));

    [Fact]
    public void Read_CapacitorOnOhms_KeepsTimeLeadsAndCircumstances()
    {
        var readings = QuickReading.Read("C14 drained 2.1 ohm, 2.2 ohm after 30 s, 2.1 ohm leads reversed").Readings;
        Assert.Equal([PowerState.OffDrained, PowerState.Unknown, PowerState.Unknown], readings.Select(r => r.Power));
        Assert.Equal([null, 30, null], readings.Select(r => r.AfterSeconds));
        Assert.Equal([false, false, true], readings.Select(r => r.LeadsReversed));
        Assert.All(readings, r => Assert.Equal(("C14", ReadingMode.Resistance), (r.From, r.Mode)));
    }

    [Theory]
    [InlineData("IC3 pin 8 reads 4.9", "\"4.9\" is a reading without a unit")]
    [InlineData("12V rail reads 1,234", "\"1,234\" can mean 1.234 or 1234")]
    public void Read_NumberThatCannotBeTrusted_IsAProblemAndNotAReading(string line, string what)
    {
        var read = QuickReading.Read(line);
        Assert.Equal(what, Assert.Single(read.Problems).What);
        Assert.Empty(read.Readings);
    }

    [Property(MaxTest = 1000)]
    public bool Read_AnyText_KeepsPiecesInsideTheLineAndInOrder(string? line)
    {
        var read = QuickReading.Read(line ?? "");
        var spans = read.Pieces.Select(p => p.Span).ToList();
        return read.Text == (line ?? "")
            && spans.All(s => s.Start >= 0 && s.Length > 0 && s.End <= read.Text.Length)
            && spans.Zip(spans.Skip(1)).All(pair => pair.First.End <= pair.Second.Start);
    }
}
