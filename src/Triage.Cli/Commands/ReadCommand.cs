using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage read</c>: a reading.</summary>
internal static class ReadCommand
{
    public static Command Of(Desk desk)
    {
        var id = Inputs.Job();
        var text = Inputs.Text("reading", "The reading in words: \"C14 + to -, ohms, power off: 12 R\".");
        var value = Inputs.OptionalText("--value", "The value with its unit: \"4n7\", \"1,2 k\", \"11.2 V\", \"OL\".");
        var from = Inputs.OptionalText("--from", "Where the one lead was.");
        var to = Inputs.OptionalText("--to", "Where the other lead was.");
        var mode = Inputs.OptionalText("--mode", "ohms, volts, diode, capacity…");
        var power = Inputs.OptionalText("--power", "off, off and drained, limited, on.");
        var load = Inputs.OptionalText("--load", "What it was loaded with.");
        var instrument = Inputs.OptionalText("--instrument", "What it was read with.");
        return desk.Command("read", "Records a reading as it was taken.", [id, text, value, from, to, mode, power, load, instrument], session =>
        {
            var job = PartialIds.Job(session.Bench, session.Text(id));
            return session.ShowRecorded(session.Steps.Reading(job.Id, new Read(desk.Clock.GetLocalNow(), session.Text(text))
            {
                Value = session.Get(value),
                From = session.Get(from),
                To = session.Get(to),
                Mode = session.Get(mode),
                Power = session.Get(power),
                Load = session.Get(load),
                Instrument = session.Get(instrument),
            }));
        });
    }
}
