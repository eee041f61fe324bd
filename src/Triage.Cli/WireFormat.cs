using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Triage.Notes.Kinds;

namespace Triage.Cli;

/// <summary>How --json writes: camelCase, enumerations in words, each log entry with its type.</summary>
internal static class WireFormat
{
    private static readonly Dictionary<Type, string> EntryTypes = new()
    {
        [typeof(Saw)] = "saw",
        [typeof(Tested)] = "tested",
        [typeof(Read)] = "read",
        [typeof(ResetTried)] = "reset",
        [typeof(Fixed)] = "fixed",
        [typeof(Swapped)] = "swapped",
        [typeof(Held)] = "held",
        [typeof(Opened)] = "opened",
        [typeof(TakenOff)] = "taken-off",
        [typeof(Powered)] = "powered",
        [typeof(PartMoved)] = "part",
        [typeof(QuickLine)] = "line",
    };

    public static JsonSerializerOptions Options { get; } = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
        TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { SayEntryType, LeaveOutPlaces } },
    };

    private static void SayEntryType(JsonTypeInfo info)
    {
        if (info.Type != typeof(LogEntry))
            return;
        info.PolymorphismOptions = new() { TypeDiscriminatorPropertyName = "type" };
        foreach (var (type, name) in EntryTypes)
            info.PolymorphismOptions.DerivedTypes.Add(new(type, name));
    }

    /// <summary>Where in a file a note names another is of no use outside.</summary>
    private static void LeaveOutPlaces(JsonTypeInfo info)
    {
        if (!typeof(Note).IsAssignableFrom(info.Type))
            return;
        foreach (var property in info.Properties.Where(p => p.Name == "references").ToList())
            info.Properties.Remove(property);
    }
}
