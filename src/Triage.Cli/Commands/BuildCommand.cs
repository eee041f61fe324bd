using System.CommandLine;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage build</c>: what one sees of a machine's build.</summary>
internal static class BuildCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var traits = new Argument<string[]>("traits") { Description = "trait=value, or trait=value,value where it has several: supply=mains,cells." };
        return desk.Command("build", "Tells what the machine is like: what feeds it, what it shows, how it is shut.", [id, traits], session =>
            session.ShowRecorded(session.Steps.TellBuild(PartialIds.Job(session.Bench, session.Text(id)).Id, session.Get(traits) ?? [])));
    }
}
