using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;
using Triage.Workshop.Answers;
using Triage.Workshop.Steps;

namespace Triage.Cli.Commands;

/// <summary><c>triage take-in</c>: opens a job.</summary>
internal static class TakeInCommand
{
    public static Command Of(Desk desk)
    {
        var complaint = Inputs.Text("complaint", "What the machine does, in the owner's words.");
        var machine = Inputs.OptionalText("--machine", "Model or kind of machine.");
        var owner = Inputs.OptionalText("--owner", "Whose it is; never shared.");
        var serial = Inputs.OptionalText("--serial", "Serial number; never shared.");
        var technician = Inputs.OptionalText("--technician", "Who takes it in.");
        var history = Inputs.Texts("--history", "Stored how long, opened before, earlier repairs, liquid.");
        var worth = Inputs.Number("--worth", "What it is worth when it works.");
        var description = Inputs.OptionalText("--description", "What one sees of it: what feeds it, what it shows, how it is shut.");
        var build = Inputs.Texts("--build", "What it is like, as trait=value.");
        var noOwner = new Option<bool>("--no-owner") { Description = "Nobody to ask: bought as defective, or one's own." };
        var consent = new ConsentOptions();
        return desk.Command("take-in", "Takes a machine in: the complaint is kept as said.",
            [complaint, machine, owner, serial, technician, history, worth, description, build, noOwner, .. consent.All], session =>
        {
            var result = session.Steps.TakeIn(new()
            {
                Machine = session.Get(machine) ?? "",
                Complaint = session.Text(complaint),
                Owner = session.Get(owner),
                Serial = session.Get(serial),
                Technician = session.Get(technician),
                History = [.. session.Get(history) ?? []],
                Worth = session.Get(worth),
                Description = session.Get(description),
                Traits = [.. session.Get(build) ?? []],
                NoOwner = session.Get(noOwner),
                Consent = consent.Over(new Consent(), session),
            });
            return Show(session, Session.Done(result), result);
        });
    }

    private static ExitCode Show(Session session, Job job, StepResult result)
    {
        var asked = session.Bench.AnswerFor(job);
        return session.Show(new StepPage(job, asked.Answer, result.Remarks), paper =>
        {
            paper.Title($"Taken in as job {job.Id}");
            paper.Blank();
            if (asked.Answer is { } answer)
                AnswerText.Write(paper, session.Bench, job, answer, result.Remarks, recorded: true, numbers: false, session.TakenFrom);
            else
                Unknown(paper, result, asked);
        });
    }

    private static void Unknown(Sheet paper, StepResult result, Asked asked)
    {
        foreach (var remark in result.Remarks.Append(asked.Refused?.ToString() ?? "").Distinct())
            paper.Item("-", remark);
    }
}
