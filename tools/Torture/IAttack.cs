namespace Torture;

/// <summary>One way in which things go wrong while somebody records.</summary>
internal interface IAttack
{
    string Name { get; }

    /// <summary>What one blow is: "kills", "faults".</summary>
    string Blows { get; }

    /// <summary>Why it cannot be done on this machine; null when it can.</summary>
    string? Cannot => null;

    /// <summary>Records in the round's book while things go wrong, and says what was acknowledged.</summary>
    Task Run(Round round);
}
