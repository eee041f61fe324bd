namespace Triage.Workshop.Translating;

/// <summary>Steps that no note has to list: they are always there.</summary>
public static class AlwaysThere
{
    /// <summary>Part it out or put it away: the worth of the working machine is lost.</summary>
    public const string GiveUp = "give-up";

    /// <summary>Live with a reset that works every time.</summary>
    public const string WorkAround = "work-around";

    /// <summary>Give it back: nothing is wrong with it.</summary>
    public const string HandBack = "hand-back";

    /// <summary>Ask the owner whether stored data may go.</summary>
    public const string AskConsent = "ask-may-erase";

    /// <summary>Share of a machine's worth that is lost by having to work around (common practice, no source).</summary>
    public const double WorkAroundLoses = 0.5;

    /// <summary>Explaining to the owner that nothing is wrong settles it with this chance (common practice, no source).</summary>
    public const double HandBackWorks = 0.9;

    /// <summary>Minutes to ask the owner, and to explain that nothing is wrong (common practice, no source).</summary>
    public static double MinutesOf(string id) => id switch
    {
        AskConsent => 1,
        HandBack => 10,
        _ => 0,
    };

    /// <summary>Null for what is not among these.</summary>
    public static string? NameOf(string id) => id switch
    {
        GiveUp => "Stop: part it out or put it away",
        WorkAround => "Live with it: do the reset each time",
        AskConsent => "Ask the owner whether what is stored in it may go, or save it",
        HandBack => "Give it back: nothing wrong with it, show the owner",
        _ => null,
    };
}
