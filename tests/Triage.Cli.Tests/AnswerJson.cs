using System.Text.Json;

namespace Triage.Cli.Tests;

/// <summary>Reads answers as --json says them.</summary>
internal static class AnswerJson
{
    public static JsonElement Answer(this JsonElement page) => page.GetProperty("answer");

    public static string Text(this JsonElement element, string property) => element.GetProperty(property).GetString()!;

    public static double Number(this JsonElement element, string property) => element.GetProperty(property).GetDouble();

    public static JsonElement[] All(this JsonElement element, string property) => [.. element.GetProperty(property).EnumerateArray()];

    /// <summary>Fault ids, most probable first.</summary>
    public static string[] Causes(this JsonElement page) => [.. page.Answer().All("causes").Select(c => c.Text("fault"))];

    public static JsonElement Cause(this JsonElement page, string fault) => page.Answer().All("causes").Single(c => c.Text("fault") == fault);

    public static double Probability(this JsonElement page, string fault) => page.Cause(fault).Number("probability");

    public static JsonElement Next(this JsonElement page) => page.Answer().GetProperty("next");

    /// <summary>Findings in the job's log, as finding=value.</summary>
    public static string[] Seen(this JsonElement page) =>
        [.. page.GetProperty("job").All("log").Where(e => e.Text("type") == "saw").Select(e => $"{e.Text("finding")}={e.Text("value")}")];
}
