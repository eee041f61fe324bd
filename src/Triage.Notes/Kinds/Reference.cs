namespace Triage.Notes.Kinds;

/// <summary>An id that a note names, and where it does.</summary>
/// <param name="Kind">What the id should be one of.</param>
/// <param name="Id">As written.</param>
/// <param name="Line">From 1, in the file.</param>
/// <param name="Column">From 1.</param>
/// <param name="Within">Id of the note that has to list it (the finding of a value, the part class of a mode); null: any note.</param>
public sealed record Reference(ReferenceKind Kind, string Id, int Line, int Column, string? Within = null);

/// <summary>What an id stands for.</summary>
public enum ReferenceKind
{
    /// <summary>Any note: a link in the text.</summary>
    Note,
    DeviceClass,
    Device,
    PartClass,
    Fault,
    Finding,
    Test,
    Reset,
    TestOrReset,

    /// <summary>A mend of some fault.</summary>
    Fix,

    /// <summary>A reset or a fix.</summary>
    Action,

    /// <summary>A finding, test, reset or fix.</summary>
    Step,

    /// <summary>A role of a device class (within a device: of its class).</summary>
    Role,

    /// <summary>A failure mode within a part class.</summary>
    Mode,

    /// <summary>A value within a finding.</summary>
    Value,

    /// <summary>An outcome within a test.</summary>
    Outcome,

    /// <summary>A step of an access tree (within a device or class: of its tree).</summary>
    Access,

    /// <summary>A trait of a build (within a device or class: of that class).</summary>
    Trait,

    /// <summary>A value of a trait (within that trait).</summary>
    TraitValue,

    /// <summary>A protect step of a class.</summary>
    Protect,
}
