using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage swapped</c>: a part exchanged for one known to be good.</summary>
internal static class SwappedCommand
{
    /// <summary>What the fault did with the old part back.</summary>
    private enum OldBack
    {
        Returned,
        StayedAway,
    }

    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var part = Inputs.Text("part", "Designator, role or kind of part.");
        var effect = Inputs.Choice<Effect>("effect", "What it did.");
        var fix = Inputs.OptionalText("--fix", "Fix that the swap stands for.");
        var oldBack = Inputs.OptionalChoice<OldBack>("--old-back", "With the old part back, the fault …");
        return desk.Command("swapped", "Records a swap with a part known to be good.", [id, part, effect, fix, oldBack], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var standsFor = session.Get(fix) is { } typed ? PartialIds.Fix(session.Bench, job, typed) : null;
            return session.ShowRecorded(session.Steps.Swapped(job.Id, session.Text(part), standsFor, session.Get(effect), session.Get(oldBack) is { } back ? back == OldBack.Returned : null));
        });
    }
}
