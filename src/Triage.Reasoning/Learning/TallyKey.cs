namespace Triage.Reasoning.Learning;

/// <summary>What a sum counts. <see cref="Everywhere"/> stands above all levels.</summary>
/// <param name="Sum">Which kind.</param>
/// <param name="At">Level id or everywhere; of a pair of findings, the value of the first.</param>
/// <param name="Subject">Fault, action, finding, scope or level.</param>
/// <param name="Finding">Finding of a link; fault of an action's outcome.</param>
/// <param name="Value">Value seen; <see cref="Yes"/> or <see cref="No"/> of an outcome.</param>
internal readonly record struct TallyKey(Sum Sum, string At, string Subject = "", string Finding = "", string Value = "")
{
    internal const string Everywhere = "";
    internal const string Yes = "yes";
    internal const string No = "no";
}

/// <summary>Kinds of additive sums.</summary>
internal enum Sum
{
    /// <summary>Weight of all jobs.</summary>
    Jobs,

    /// <summary>Weight of jobs with a cause, by level.</summary>
    Explained,

    /// <summary>The same of the level that is the subject, which lies right below.</summary>
    Below,

    /// <summary>Weight of jobs with two independent causes.</summary>
    Double,

    /// <summary>Weight of jobs whose cause was new or is not listed for such a machine, by level.</summary>
    New,

    /// <summary>Weight of a fault, by level.</summary>
    Share,

    /// <summary>Weight of all causes of jobs on machines of a scope, which is the subject, by level: what could have been any of its faults.</summary>
    Exposure,

    /// <summary>Weight of a value that a fault alone would have shown, by level.</summary>
    Link,

    /// <summary>Weight of a value without any linked cause.</summary>
    Ambient,

    /// <summary>Weight of a value that a fault showed beside another value, which stands in the level's place.</summary>
    Pair,

    /// <summary>Whether an action silenced a fault.</summary>
    Works,

    /// <summary>Whether the fault stayed silent.</summary>
    Holds,
}
