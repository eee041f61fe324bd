namespace Triage.Notes.Kinds;

/// <summary>Something that can hurt someone, shown before the step that meets it.</summary>
/// <param name="Hazard">What kind of danger.</param>
/// <param name="Say">What to do about it, in words.</param>
public sealed record Caution(Hazard Hazard, string Say)
{
    /// <summary>The step must not be done here: hand over to someone licensed.</summary>
    public bool HandOver { get; init; }

    /// <summary>Access step of the class behind which it lies: every step behind it inherits the caution. Null: wherever it is named.</summary>
    public string? Reach { get; init; }

    /// <summary>Only for steps with at least this power.</summary>
    public PowerStage Power { get; init; }

    public BuildCondition? Build { get; init; }
}

/// <summary>Kinds of danger at the bench.</summary>
public enum Hazard
{
    Other,
    Mains,
    StoredCharge,
    PictureTube,
    MicrowaveHighVoltage,
    LithiumCell,
    LeakedElectrolyte,
    Lead,
    Mercury,
    Asbestos,
    Laser,
    Hot,
    Moving,
    DataLoss,
}
