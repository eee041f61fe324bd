namespace Triage.Measurements.Parts;

/// <summary>Time-current characteristic of a miniature fuse-link, letters of IEC 60127 (from memory).</summary>
public enum FuseSpeed
{
    /// <summary>FF.</summary>
    VeryQuick,

    /// <summary>F.</summary>
    Quick,

    /// <summary>M.</summary>
    Medium,

    /// <summary>T.</summary>
    TimeLag,

    /// <summary>TT.</summary>
    LongTimeLag,
}
