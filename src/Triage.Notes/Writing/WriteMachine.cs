using Triage.Measurements.Readings;
using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

/// <summary>Writes device classes, devices and part classes.</summary>
internal static class WriteMachine
{
    public static FieldWriter DeviceClass(FieldWriter fields, DeviceClass note) => fields
        .Mark("exact", note.Exact)
        .Builds(note.Builds)
        .Each("roles", note.Roles, role => new FieldWriter()
            .Text("role", role.Id).Text("name", role.Name).Text("part", role.Part).Text("access", role.Access)
            .Build(role.Build).OnOneLine)
        .Cautions(note.Cautions)
        .Each("stop-at-once", note.StopAtOnce, Of)
        .Texts("counter", note.Counter)
        .Each("pointless", note.Pointless, pointless => new FieldWriter().Text("finding", pointless.Finding).Texts("value", pointless.Values).Texts("then", pointless.Then).OnOneLine)
        .Protect(note.Protect)
        .Texts("before-power", note.BeforePower)
        .Texts("limited-power", note.LimitedPower)
        .Texts("usual-order", note.UsualOrder)
        .Access(note.Access)
        .Texts("while-open", note.WhileOpen)
        .Proof(note.Proof)
        .Value("exchange", note.Exchange is { } whole ? new FieldWriter().Effort(whole.Effort).Build(whole.Build).OnOneLine : null)
        .Number("usual-worth", note.UsualWorth)
        .Texts("not-covered", note.NotCovered);

    private static YamlValue Of(StopNow stop) =>
        stop.Build is null ? YamlValue.Of(stop.Say) : new FieldWriter().Text("say", stop.Say).Build(stop.Build).OnOneLine;

    public static FieldWriter Device(FieldWriter fields, Device note) => fields
        .Text("maker", note.Maker)
        .Text("model", note.Model)
        .Text("class", note.Class)
        .Text("years", note.Years)
        .Texts("boards", note.Boards)
        .Each("parts", note.Parts, part => new FieldWriter()
            .Text("designator", part.Designator).Text("part", part.Part).Text("role", part.Role)
            .Text("where", part.Where).Text("rating", part.Rating).OnOneLine)
        .Access(note.Access)
        .Each("drawings", note.Drawings, Of)
        .Texts("without", note.Without)
        .Build(note.Build);

    public static YamlFields Of(Drawing drawing) => new FieldWriter()
        .Text("file", drawing.File).Text("board", drawing.Board).Text("shows", drawing.Shows).OnOneLine;

    public static FieldWriter PartClass(FieldWriter fields, PartClass note) => fields
        .Each("modes", note.Modes, mode => new FieldWriter()
            .Text("mode", mode.Id).Text("name", mode.Name).Chance("share", mode.Share).OnOneLine)
        .Each("readings", note.Readings, Reading)
        .Texts("wears", note.Wears)
        .Texts("look-for", note.LookFor)
        .Texts("test-in-place", note.TestInPlace)
        .Texts("test-out", note.TestOut)
        .Texts("must-match", note.MustMatch)
        .Texts("may-be-better", note.MayBeBetter)
        .Texts("must-not-change", note.MustNotChange)
        .Texts("new-can-be-bad", note.NewCanBeBad)
        .Cautions(note.Cautions);

    private static YamlFields Reading(PartReading reading)
    {
        var modes = reading.Modes.OrderBy(m => m.Key, StringComparer.Ordinal)
            .Aggregate(new FieldWriter(), (table, m) => table.Text(m.Key, m.Value.Text));
        return new FieldWriter()
            .Text("mode", ReadingModeWords.Of(reading.Mode))
            .Texts("at", reading.At)
            .Flag("in-place", reading.InPlace)
            .Mark("power-on", reading.PowerOn)
            .Text("good", reading.Good.Text)
            .Group("modes", modes)
            .Text("source", reading.Source)
            .OnOneLine;
    }
}
