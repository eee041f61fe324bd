using System.Text;
using Triage.Notes.Kinds;

namespace MadeUpJobs;

/// <summary>What people write below a job when it is done. Names in braces are filled in.</summary>
internal static class Remarks
{
    private static readonly string[] Fasteners =
    [
        "6 screws, all alike", "8 screws, 2 short", "10 screws", "back plate", "front knobs", "the shield over the board", "ribbon to the panel", "speaker plug", "4 feet with screws below",
        "earth lead", "cable tie at the transformer", "two clips of the cover", "the long screw in the middle", "cell door",
    ];

    private static readonly string[] Places =
    [
        "tin lid", "egg box", "drawn on the back of the bill", "magnet tray, left", "jam lid", "cup without a handle", "taped to the case", "back in their holes", "box 3", "match box",
    ];

    private static readonly string[] First =
    [
        "Came in with {odd}, and it did that at once on the bench too.",
        "On the bench it behaved for an hour before {odd} came back.",
        "{where} is where to look first on this one.",
        "The owner had {odd} for months before bringing it.",
        "Nothing to see from outside.",
        "Dusty inside, a coin and two hair pins in the case.",
        "Somebody had been in there before: one screw of another thread.",
        "Thought of the supply first, as one does.",
        "It smelled of cellar.",
        "Opened it expecting worse.",
        "Same complaint as one I had last year, another cause.",
        "The label says it was checked in a shop once. It was not.",
        "A clean machine, somebody was careful with it.",
        "Looked like nothing at all until I warmed it a little.",
        "The lid holds by two clips that like to break, go in from the back.",
    ];

    private static readonly string[] Found =
    [
        "{fault}, plain once the cover was off.",
        "{fault}. Found on the second look, not the first.",
        "It was the {part} after all.",
        "Went by the order of likelihood and the second one was it: {fault}.",
        "The {part} measured nothing like a good one.",
        "Compared it with the same spot on another {model}: clear as day.",
        "A knock with the handle of the screwdriver on the {part} told me.",
        "What gave it away: {odd}, but everything round the {part} was right.",
        "{fault}. I had the wrong idea for half an hour.",
        "No doubt about the {part}: out it reads bad, in it reads bad.",
        "Could also have been the neighbour, but the {part} was the one.",
        "One lead lifted, and the {part} was bad on its own as well.",
        "Seen under the lens at last: {fault}.",
    ];

    private static readonly string[] Mended =
    [
        "{fix}: {min} minutes, most of it screws.",
        "{fix}. Works.",
        "{fix}, and cleaned the rest while it was open.",
        "Did the one beside it as well, it is the same age.",
        "The new part is a size smaller, a drop of glue holds it.",
        "Old part kept in a bag with the job number.",
        "Kept the leads short and the sleeve on.",
        "Washed the place with spirit afterwards.",
        "Next time I would do this before taking the front off.",
        "Went through all functions after that: fine.",
        "Put a note inside the case with the date.",
        "{fix}. The second attempt was neater than the first.",
        "Had the part in the drawer from a dead one, measured it first.",
    ];

    private static readonly string[] Last =
    [
        "Owner told to switch off at the wall.",
        "Told the owner to take the cells out for the winter.",
        "He came by bicycle and took it home in a blanket.",
        "Charged only the part.",
        "She paid with plums.",
        "Wait and see.",
        "I would not bet on ten years.",
        "A good hour for a machine that is used every day.",
        "The case is cracked at one corner, left as it is.",
        "No parts left over, for once.",
        "One knob is a stranger now.",
        "Would have gone faster with the drawing.",
        "To remember: the {part} of the {model} sits under the flat cable.",
    ];

    private static readonly string[] Short = ["{fault}. {fix}.", "{fix}.", "{part} bad. Done.", "{fault}", "{part}, as usual with the {model}.", "{fix}, {min} min.", "was the {part}"];

    private static readonly string[] GivenUp =
    [
        "Not found. {odd} stays. Put it away until another one comes in.",
        "Costs more than it is worth, kept for parts with the owner's leave.",
        "Could be the {part}, could be not; no second one to compare with.",
        "Stopped here. What I tried is in the list above.",
        "{fix} did not help, and I ran out of ideas.",
    ];

    public static string Fastener(Random random) => random.Any(Fasteners);

    public static string Place(Random random) => random.Any(Places);

    /// <summary>A few lines on a job, in the manner of the one who did it.</summary>
    public static string On(SickMachine machine, Finding odd, Evening evening, Technician who, Random random)
    {
        string[] lines = evening.Cure is null ? [random.Any(GivenUp)]
            : who.Looks < 0.5 ? random.Happens(0.4) ? [random.Any(Short)] : [random.Any(Short), random.Any(Last)]
            : [.. new[] { random.Any(First), random.Any(Found), random.Any(Mended), random.Any(Last) }.Where(_ => random.Happens(0.7)), Reading(random)];
        return Filled(string.Join('\n', lines.Where(l => l.Length > 0)), machine, odd, evening);
    }

    private static string Reading(Random random) => random.Next(8) switch
    {
        0 => Invariant($"Idle current afterwards {random.Next(40, 600)} mA."),
        1 => Invariant($"Rail {random.Next(480, 512) / 100.0:0.00} V, ripple {random.Next(2, 40)} mV."),
        2 => Invariant($"{{part}}: {random.Next(2, 990) / 10.0:0.0} R before, as it should be now."),
        3 => Invariant($"Ran {random.Next(2, 9)} hours on the shelf."),
        _ => "",
    };

    private static string Filled(string text, SickMachine machine, Finding odd, Evening evening)
    {
        var role = machine.Scope.Roles.FirstOrDefault(r => r.Id == machine.Cause.Role)?.Name ?? machine.Cause.Name;
        var own = machine.Scope.Device?.Parts.FirstOrDefault(p => p.Role == machine.Cause.Role);
        return new StringBuilder(text)
            .Replace("{part}", own?.Designator is { } designator ? $"{Small(role)} ({designator})" : Small(role))
            .Replace("{fault}", machine.Cause.Name)
            .Replace("{fix}", evening.Cure?.Name ?? machine.Cause.Mends.FirstOrDefault(m => m.Name is not null)?.Name ?? "What I did")
            .Replace("{odd}", Small(machine.InWords(odd)))
            .Replace("{where}", own?.Where is { } where ? char.ToUpperInvariant(where[0]) + where[1..] : "The front")
            .Replace("{model}", machine.Scope.Device?.Model ?? machine.Scope.Name)
            .Replace("{min}", Invariant($"{evening.Minutes:0}"))
            .ToString();
    }

    public static string Small(string text) => text.Length > 1 && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
