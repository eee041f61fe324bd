using System.Collections.Immutable;
using Triage.Notes.Kinds;
using Triage.Tools.Exam.Cases;
using Triage.Workshop.Knowledge;

namespace Triage.Tools.Exam.Playing;

/// <summary>
/// Plays a machine from its case: what the key says, else the normal thing, and “can't tell” where the normal thing would contradict
/// the truth. (What the complaint says is recorded before anything is asked.)
/// </summary>
internal sealed class KeyAnswers(ExamCase exam, Notebook notes) : IPlayer
{
    private readonly HashSet<string> mended = [];
    private readonly HashSet<string> goneAgain = [];

    private readonly NormalThing normal = new(notes);
    private bool missingMended;

    /// <summary>What a reset or fix does more often than not, it does here.</summary>
    private const double LikelyEnough = 0.5;

    public ImmutableArray<ImmutableArray<string>> Unmended => [.. exam.Truth.Where(part => !part.Any(mended.Contains))];

    public bool AllMended => Unmended.IsEmpty && (exam.Missing is null ? !exam.Truth.IsEmpty : missingMended);

    public Build Build => exam.ToldBuild;

    public string? Sees(Asked asked)
    {
        var value = IdsOf(asked).Select(Known).FirstOrDefault(v => v is not null);
        if (value == KnownAnswer.CannotTell)
            return null;
        if (value is not null && asked.Choices.All(c => c.Id != value))
            throw new InvalidDataException($"{exam.Id}: “{value}” is no answer to {asked.Id}: write {string.Join(", ", asked.Choices.Select(c => c.Id))} or {KnownAnswer.CannotTell}.");
        return value ?? normal.Of(asked, StillThere());
    }

    /// <summary>What is asked may be answered by its own id, by the finding, or by any test that reveals it.</summary>
    private IEnumerable<string> IdsOf(Asked asked) => asked.Finding is not { } finding ? [asked.Id]
        : [asked.Id, finding, .. notes.Of<Test>().Where(t => t.Reveals is { } revealed && notes.Today(revealed) == finding).Select(t => t.Id)];

    public bool CanSecure(string protect) => Known(protect) != KnownAnswer.NotPossible;

    public Effect Does(string action)
    {
        var known = Known(action);
        var cleared = StillThere().Where(f => Cleared(action, f)?.Works.Probability >= LikelyEnough).ToList();
        if (known == KnownAnswer.GoneAgain || (known is null && cleared.Any(f => Cleared(action, f)!.Holds.Probability < LikelyEnough)))
        {
            goneAgain.Add(action);
            return Effect.Works;
        }

        goneAgain.Remove(action);
        if (known is null or "works")
            mended.UnionWith(cleared.Select(f => f.Id));
        if (known == "works" && cleared.Count == 0)
            MendAll();
        return known is null ? cleared.Count > 0 && AllMended ? Effect.Works : Effect.NoChange : EffectOf(action, known);
    }

    public bool StillWorks(string action) => !goneAgain.Contains(action) && AllMended;

    public void Comes(Turn turn)
    {
    }

    /// <summary>The answer for the state the machine is in now; later lines win.</summary>
    private string? Known(string id) => exam.Answers.LastOrDefault(a => a.Id == id && Applies(a.When))?.Value;

    private bool Applies(string when) => when switch
    {
        KnownAnswer.Before => !AllMended,
        KnownAnswer.AfterMend => AllMended,
        var fault => mended.Contains(fault),
    };

    private IEnumerable<Fault> StillThere() => Unmended.SelectMany(part => part).Select(id => notes.Find<Fault>(id)).OfType<Fault>();

    /// <summary>The notes know no fix for what is wrong, the key does.</summary>
    private void MendAll()
    {
        mended.UnionWith(Unmended.SelectMany(part => part));
        missingMended = true;
    }

    /// <summary>What an action does to a fault, as the notes say it; null when they do not name it.</summary>
    private Clears? Cleared(string action, Fault fault) =>
        notes.Find<Reset>(action) is { } reset
            ? (notes.Find<Reset>(reset.FormOf) ?? reset).Clears.FirstOrDefault(c => notes.Today(c.Fault) == fault.Id)
            : fault.Mends.Where(m => m.Id == action).Select(m => new Clears(fault.Id, m.Works, new(1, 1))).FirstOrDefault();

    private Effect EffectOf(string action, string known) =>
        Enum.TryParse<Effect>(known.Replace("-", "", StringComparison.Ordinal), ignoreCase: true, out var effect) ? effect
            : throw new InvalidDataException($"{exam.Id}: “{known}” is no outcome of {action}: write works, no-change, worse, not-seen or gone-again.");
}
