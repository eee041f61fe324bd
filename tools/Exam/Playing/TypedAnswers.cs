using System.Collections.Immutable;
using System.Globalization;
using Triage.Notes.Kinds;

namespace Triage.Tools.Exam.Playing;

/// <summary>A person plays the machine: the product's cautions, steps and buttons are printed, and the answer is typed by number or id.</summary>
internal sealed class TypedAnswers(TextReader input, TextWriter output) : IPlayer
{
    private static readonly ImmutableArray<Choice> Effects =
        [new("works", "it works"), new("no-change", "no change"), new("worse", "worse than before"), new("not-seen", "the fault did not show, so nobody knows")];

    private static readonly ImmutableArray<Choice> Lasts = [new("yes", "it still works"), new("no", "the fault is back")];

    private static readonly ImmutableArray<Choice> Secured = [new("done", "it is done"), new("not-possible", "it cannot be done")];

    private int step;

    public ImmutableArray<ImmutableArray<string>> Unmended => [];

    public bool AllMended => false;

    public Build Build => Build.Untold;

    public void Comes(Turn turn)
    {
        output.WriteLine();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{++step}. {turn.Name} [{turn.Kind}, {turn.Id}, {turn.Minutes + turn.OpeningMinutes:0} min]"));
        foreach (var line in turn.Says)
            output.WriteLine($"   {line}");
    }

    public string? Sees(Asked asked) => Chosen(asked.Name, asked.Choices, "can't tell")?.Id;

    public bool CanSecure(string protect) => Chosen("And?", Secured, null)!.Id == "done";

    public Effect Does(string action) => Chosen("After it?", Effects, null)!.Id switch
    {
        "works" => Effect.Works,
        "worse" => Effect.Worse,
        "not-seen" => Effect.NotSeen,
        _ => Effect.NoChange,
    };

    public bool StillWorks(string action) => Chosen("And now?", Lasts, null)!.Id == "yes";

    /// <summary>A line of free words.</summary>
    /// <exception cref="EndOfStreamException">Nothing more is typed.</exception>
    public string Words(string question)
    {
        output.Write($"{question}: ");
        output.Flush();
        return input.ReadLine()?.Trim() ?? throw new EndOfStreamException("The answers ended here; type or pipe more to go on.");
    }

    private Choice? Chosen(string question, ImmutableArray<Choice> choices, string? none)
    {
        output.WriteLine($"   {question}");
        foreach (var (i, choice) in choices.Index())
            output.WriteLine($"     {i + 1} {choice.Name}");
        if (none is not null)
            output.WriteLine($"     0 {none}");
        while (true)
        {
            var typed = Words("   ");
            if (none is not null && typed is "0")
                return null;
            if (choices.Index().Where(c => typed == c.Item.Id || typed == (c.Index + 1).ToString(CultureInfo.InvariantCulture)).Select(c => c.Item).FirstOrDefault() is { } chosen)
                return chosen;
            output.WriteLine($"   “{typed}” is none of these; type one of the numbers.");
        }
    }
}
