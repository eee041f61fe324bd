using System.CommandLine;
using System.CommandLine.Parsing;
using System.Text.Json;
using Triage.Measurements.Quantities;
using Triage.Notes.Parsing;

namespace Triage.Cli.Typed;

/// <summary>Arguments and options as people type them.</summary>
internal static class Inputs
{
    public static Argument<string> Job() => Text("job", "Id of the job, or enough of it to be the only one.");

    public static Argument<string> Text(string name, string description) => new(name) { Description = description };

    public static Option<string?> OptionalText(string name, string description) => new(name) { Description = description };

    /// <summary>May be given several times.</summary>
    public static Option<string[]> Texts(string name, string description) =>
        new(name) { Description = description, AllowMultipleArgumentsPerToken = true, DefaultValueFactory = _ => [] };

    /// <summary>A number, with a point or a comma.</summary>
    public static Option<double?> Number(string name, string description) =>
        new(name) { Description = description, CustomParser = result => ReadNumber(result) };

    public static Option<DateTimeOffset?> Date(string name, string description) =>
        new(name) { Description = description, CustomParser = ReadDate };

    public static Argument<T> Choice<T>(string name, string description) where T : struct, Enum =>
        new(name) { HelpName = name, Description = $"{description} ({string.Join(", ", Words<T>())})", CustomParser = result => ReadChoice<T>(result) ?? default };

    public static Option<T?> OptionalChoice<T>(string name, string description) where T : struct, Enum =>
        new(name) { HelpName = "word", Description = $"{description} ({string.Join(", ", Words<T>())})", CustomParser = ReadChoice<T> };

    public static Option<bool> Flag(string name, string description) => new(name) { Description = description };

    /// <summary>"no-change" for NoChange.</summary>
    public static string Word<T>(T value) where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    public static IEnumerable<string> Words<T>() where T : struct, Enum => Enum.GetValues<T>().Select(Word);

    public static T? Read<T>(string typed) where T : struct, Enum =>
        Enum.GetValues<T>().Where(v => Word(v).Equals(typed.Trim(), StringComparison.OrdinalIgnoreCase)).Select(v => (T?)v).FirstOrDefault();

    private static string Typed(ArgumentResult result) => result.Tokens.Count == 0 ? "" : result.Tokens[^1].Value;

    private static void Wrong(ArgumentResult result, string why) =>
        result.AddError($"{(result.Parent is OptionResult option ? option.Option.Name : result.Argument.Name)}: {why}");

    private static double? ReadNumber(ArgumentResult result)
    {
        var typed = Typed(result);
        var read = string.IsNullOrWhiteSpace(typed) ? null : ValueText.Read(typed, Unit.Number);
        if (read?.Quantity is { Unit: Unit.Number } number)
            return number.Value;
        Wrong(result, CommandTexts.NotANumber(typed, read?.Problem?.Instead ?? "write it in digits"));
        return null;
    }

    private static DateTimeOffset? ReadDate(ArgumentResult result)
    {
        if (NoteDate.Read(Typed(result), out _) is { } date)
            return date;
        Wrong(result, CommandTexts.NotADate(Typed(result)));
        return null;
    }

    private static T? ReadChoice<T>(ArgumentResult result) where T : struct, Enum
    {
        if (Read<T>(Typed(result)) is { } value)
            return value;
        Wrong(result, CommandTexts.NotAChoice(Typed(result), Words<T>()));
        return null;
    }
}
