using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Cli.Commands;

/// <summary><c>triage ask</c>: an answer to a complaint; nothing is written.</summary>
internal static class AskCommand
{
    public static Command Of(Desk desk)
    {
        var complaint = Inputs.Text("complaint", "What the machine does, in the owner's words.");
        var machine = Inputs.OptionalText("--machine", "Model or kind of machine; may be left out when the complaint names it.");
        var numbers = Inputs.Flag("--numbers", "Show decibans and the jobs behind each cause.");
        var seen = Inputs.Texts("--seen", "What is seen besides the words, as finding=value; with it the complaint may be empty.");
        return desk.Command("ask", "Causes, resets worth trying and the next step for a complaint. Nothing is written.", [complaint, machine, seen, numbers], session =>
        {
            var asking = session.Steps.Ask(session.Get(machine) ?? "", session.Text(complaint), [.. (session.Get(seen) ?? []).Select(Seen)]);
            if (asking.Refused is { } refused)
                throw new RefusedException(refused);
            return session.Show(asking, paper =>
                AnswerText.Write(paper, session.Bench, asking.Job!, asking.Answer!, asking.Remarks, recorded: false, session.Get(numbers), session.TakenFrom));
        });
    }

    private static SeenFinding Seen(string typed) =>
        typed.Split('=') is [{ Length: > 0 } finding, { Length: > 0 } value]
            ? new(finding, value)
            : throw new RefusedException(new(RefusalKind.NotUnderstood, $"“{typed}” is no finding with a value.", "Write it as finding=value, for instance display=blank."));
}
