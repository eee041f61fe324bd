using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage part</c>: the part and the wait for it.</summary>
internal static class PartCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var part = Inputs.Text("part", "Kind of part, or its designator.");
        var state = Inputs.Choice<PartState>("state", "What became of it.");
        var price = Inputs.Number("--price", "Its price.");
        var shipping = Inputs.Number("--shipping", "What sending it costs.");
        var lead = Inputs.Number("--lead-days", "Days until it comes.");
        var from = Inputs.OptionalText("--from", "Where it comes from.");
        var code = Inputs.OptionalText("--date-code", "Date code on it.");
        return desk.Command("part", "Records a part: needed, ordered, arrived, tested, fitted.", [id, part, state, price, shipping, lead, from, code], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            return session.ShowRecorded(session.Steps.PartMoved(job.Id, new(desk.Clock.GetLocalNow(), session.Text(part), session.Get(state))
            {
                Price = session.Get(price),
                Shipping = session.Get(shipping),
                LeadDays = session.Get(lead),
                From = session.Get(from),
                DateCode = session.Get(code),
            }));
        });
    }
}
