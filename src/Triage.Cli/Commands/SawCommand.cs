using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage saw</c>: a finding, seen or not seen.</summary>
internal static class SawCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var finding = Inputs.Text("finding", "Id of the finding, or enough of it.");
        var value = Inputs.Text("value", "What it was; its normal value when it was looked for and not seen.");
        var when = Inputs.Texts("--when", "Under which condition: cold, warm, flexed, tapped, on-load, after-power-loss.");
        var watched = Inputs.Number("--watched", "How many minutes one watched.");
        var sure = Inputs.Number("--sure", "How sure, from 0 to 1: 0.5 when it may as well not be so.");
        var comesAndGoes = Inputs.Flag("--comes-and-goes", "It comes and goes.");
        return desk.Command("saw", "Records what was seen, heard or smelt.", [id, finding, value, when, watched, sure, comesAndGoes], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var seen = PartialIds.Note<Finding>(session.Bench, "finding", session.Text(finding));
            var what = PartialIds.Value(seen.Name, session.Text(value), [.. seen.Values.Select(v => v.Id)]);
            return session.ShowRecorded(session.Steps.Saw(job.Id, seen.Id, what, [.. session.Get(when) ?? []], session.Get(watched), session.Get(sure), session.Get(comesAndGoes)));
        });
    }
}
