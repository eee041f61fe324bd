namespace Triage.Search.Indexing;

/// <summary>Names of values as notes write them: DeviceClass → device-class.</summary>
public static class Written
{
    public static string As<T>(T value)
        where T : struct, Enum =>
        string.Concat(value.ToString().Select((c, i) => char.IsUpper(c) && i > 0 ? $"-{char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));
}
