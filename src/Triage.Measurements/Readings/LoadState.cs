namespace Triage.Measurements.Readings;

/// <summary>Whether the supply that was read fed its load.</summary>
public enum LoadState
{
    Unknown,
    NoLoad,
    Loaded,
}
