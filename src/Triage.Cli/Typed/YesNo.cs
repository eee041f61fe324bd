namespace Triage.Cli.Typed;

/// <summary>An answer in a word; the parser would take a truth value for a flag and leave the word alone.</summary>
internal enum YesNo
{
    Yes,
    No,
}

internal static class YesNoAnswers
{
    /// <summary>Null when nobody said.</summary>
    public static bool? IsYes(this YesNo? said) => said is null ? null : said == YesNo.Yes;
}
