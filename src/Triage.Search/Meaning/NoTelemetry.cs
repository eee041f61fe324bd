using System.Runtime.InteropServices;

namespace Triage.Search.Meaning;

/// <summary>
/// The model's runtime writes a device id and an event database under the user's cache and looks up its vendor's collector; its own call to
/// disable that comes too late. It reads this variable before its first use, and from the native surroundings, which
/// <see cref="Environment.SetEnvironmentVariable(string, string?)"/> leaves alone on Unix.
/// </summary>
internal static partial class NoTelemetry
{
    private const string Variable = "ORT_DISABLE_TELEMETRY";

    public static void Set()
    {
        Environment.SetEnvironmentVariable(Variable, "1");
        if (!OperatingSystem.IsWindows())
            _ = SetNative(Variable, "1", overwrite: 1);
    }

    [LibraryImport("libc", EntryPoint = "setenv", StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int SetNative(string name, string value, int overwrite);
}
