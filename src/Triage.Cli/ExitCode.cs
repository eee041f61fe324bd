using Triage.Workshop;

namespace Triage.Cli;

/// <summary>What the command tells the shell.</summary>
internal enum ExitCode
{
    Ok = 0,

    /// <summary>The note check found errors.</summary>
    ErrorsFound = 1,

    /// <summary>The command line itself was not understood.</summary>
    Usage = 2,

    /// <summary>Not found, not understood, not allowed.</summary>
    Refused = 3,

    /// <summary>The note was changed by somebody else meanwhile; both versions are kept.</summary>
    ChangedMeanwhile = 4,

    /// <summary>A folder or file cannot be read or written.</summary>
    CannotAccess = 5,

    /// <summary>Stopped by Ctrl-C before it was through: 128 and the number of the signal (POSIX shells).</summary>
    Interrupted = 130,
}

internal static class ExitCodes
{
    public static ExitCode Of(RefusalKind kind) => kind switch
    {
        RefusalKind.NotFound or RefusalKind.NotUnderstood or RefusalKind.NotAllowed => ExitCode.Refused,
        RefusalKind.ChangedMeanwhile => ExitCode.ChangedMeanwhile,
        RefusalKind.CannotWrite => ExitCode.CannotAccess,
    };
}
