using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage ask</c>: an answer to a complaint; nothing is written.</summary>
internal static class AskCommand
{
    public static Command Of(Desk desk)
    {
        var complaint = Inputs.Text("complaint", "What the machine does, in the owner's words.");
        var machine = Inputs.OptionalText("--machine", "Model or kind of machine; may be left out when the complaint names it.");
        var numbers = Inputs.Flag("--numbers", "Show decibans and the jobs behind each cause.");
        return desk.Command("ask", "Causes, resets worth trying and the next step for a complaint. Nothing is written.", [complaint, machine, numbers], session =>
        {
            var asking = session.Steps.Ask(session.Get(machine) ?? "", session.Text(complaint));
            if (asking.Refused is { } refused)
                throw new RefusedException(refused);
            return session.Show(asking, paper =>
                AnswerText.Write(paper, session.Bench, asking.Job!, asking.Answer!, asking.Remarks, recorded: false, session.Get(numbers)));
        });
    }
}
