namespace Triage.Measurements.Readings;

/// <summary>How the circuit was powered while reading.</summary>
public enum PowerState
{
    Unknown,

    /// <summary>Off, unplugged, and stored charge drained and checked.</summary>
    OffDrained,
    Off,

    /// <summary>On behind a current limit or a series lamp.</summary>
    Limited,
    On,
}
