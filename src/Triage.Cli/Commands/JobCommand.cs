using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Workshop.Answers;

namespace Triage.Cli.Commands;

/// <summary><c>triage job</c>: everything about one job.</summary>
internal static class JobCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var numbers = Inputs.Flag("--numbers", "Show decibans and the jobs behind each cause.");
        return desk.Command("job", "A whole job: what came in, its time line, and the answer while it is open.", [id, numbers], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            var asked = job.IsOpen ? session.Bench.AnswerFor(job) : new Asked(null, null);
            return session.Show(new StepPage(job, asked.Answer, []), paper =>
            {
                JobText.Write(paper, session.Bench, job);
                paper.Blank();
                if (asked.Answer is { } answer)
                    AnswerText.Write(paper, session.Bench, job, answer, [], recorded: true, session.Get(numbers), session.TakenFrom);
                else if (asked.Refused is { } refused)
                    paper.Item("-", refused.ToString());
            });
        });
    }
}
