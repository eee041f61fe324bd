namespace Triage.Workshop.Knowledge;

/// <summary>Steps that no note has to list: they are always there.</summary>
public static class AlwaysThere
{
    /// <summary>Put it away: the worth of the working machine is lost.</summary>
    public const string Park = "park";

    /// <summary>Part it out: its worth is lost but for what its parts are good for, and taking it apart takes time.</summary>
    public const string PartOut = "part-out";

    /// <summary>Give it to somebody licensed for what is forbidden here.</summary>
    public const string HandOver = "hand-over";

    /// <summary>Live with a reset that works every time.</summary>
    public const string WorkAround = "work-around";

    /// <summary>Give it back: nothing is wrong with it.</summary>
    public const string HandBack = "hand-back";

    /// <summary>All small looks at once.</summary>
    public const string LookItOver = "look-it-over";

    /// <summary>A whole new one in its place.</summary>
    public const string Exchange = "exchange";

    /// <summary>Ask the owner whether stored data may go.</summary>
    public const string AskConsent = "ask-may-erase";

    /// <summary>Share of a machine's worth that is lost by having to work around (common practice, no source).</summary>
    public const double WorkAroundLoses = 0.5;

    /// <summary>Share of a machine's worth that its parts keep (common practice, no source).</summary>
    public const double PartsKeep = 0.1;

    /// <summary>Days until a machine that was handed over comes back (common practice, no source).</summary>
    public const double HandOverDays = 14;

    /// <summary>Explaining to the owner that nothing is wrong settles it with this chance (common practice, no source).</summary>
    public const double HandBackWorks = 0.9;

    /// <summary>A new one works with this chance (common practice, no source).</summary>
    public const double ExchangeWorks = 0.97;

    /// <summary>Minutes to ask the owner, to explain that nothing is wrong, to take a machine apart, to pack one up (common practice, no source).</summary>
    public static double MinutesOf(string id) => id switch
    {
        AskConsent => 1,
        HandBack => 10,
        PartOut => 30,
        HandOver => 15,
        _ => 0,
    };

    /// <summary>Null for what is not among these.</summary>
    public static string? NameOf(string id) => id switch
    {
        Park => "Stop: put it away, mending costs more than it is worth",
        PartOut => "Stop: part it out, keep what is good in it",
        HandOver => "Hand it over to somebody licensed for this",
        WorkAround => "Live with it: do the reset each time",
        LookItOver => "Look it over and try it",
        Exchange => "Exchange the whole for a new one of the same kind",
        AskConsent => "Ask the owner whether what is stored in it may go, or save it",
        HandBack => "Give it back: nothing wrong with it, show the owner",
        _ => null,
    };
}
