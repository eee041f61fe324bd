using Triage.Notes.Kinds;

namespace Triage.Notes.Writing;

/// <summary>Writes the smaller groups of a job note, each in braces on one line.</summary>
public static class JobYaml
{
    /// <summary>One item of <c>causes</c>.</summary>
    public static YamlFields Of(FoundCause cause) => new FieldWriter()
        .Text("fault", cause.Fault)
        .Word<Grade>("grade", cause.Grade)
        .Number("chance", cause.Chance == 1 ? null : cause.Chance)
        .Mark("new", cause.WasNew)
        .OnOneLine;

    /// <summary>The value of <c>waits-for</c>.</summary>
    public static YamlFields Of(Waiting waiting) => new FieldWriter().Text("for", waiting.For).Date("until", waiting.Until).OnOneLine;

    /// <summary>One item of <c>follow-ups</c>.</summary>
    public static YamlFields Of(FollowUp heard) =>
        new FieldWriter().Date("on", heard.On).Flag("came-back", heard.CameBack).Text("note", heard.Note).OnOneLine;

    /// <summary>What the owner agreed to; what was not asked is left out.</summary>
    public static YamlFields Of(Consent consent) => Fields(consent).OnOneLine;

    internal static FieldWriter Fields(Consent consent) => new FieldWriter()
        .Number("spending-limit", consent.SpendingLimit)
        .Flag("may-erase", consent.MayErase)
        .Flag("originals-back", consent.OriginalsBack);
}
