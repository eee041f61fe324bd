using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;

namespace Triage.Cli.Commands;

/// <summary><c>triage agree</c>: what the owner agreed to.</summary>
internal static class AgreeCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var consent = new ConsentOptions();
        return desk.Command("agree", "Records what the owner agreed to; what is not said stays as it was.", [id, .. consent.All], session =>
        {
            if (!consent.Given(session))
                throw new RefusedException(CommandTexts.NothingToAgree());
            var job = PartialIds.Job(session.Bench, session.Text(id));
            return session.ShowStep(session.Steps.Agree(job.Id, consent.Over(job.Consent, session)),
                done => $"agreed: {JobText.Agreed(done.Consent, session.Bench.Settings)}");
        });
    }
}
