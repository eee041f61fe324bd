using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;
using Triage.Workshop.Reviews;

namespace Triage.Cli.Commands;

/// <summary><c>triage review</c>: which fixes resolved which symptoms.</summary>
internal static class ReviewCommand
{
    private const int Usual = 25;

    public static Command Of(Desk desk)
    {
        var device = Inputs.OptionalText("--device", "Only this device or class.");
        var take = Inputs.Number("--take", $"How many rows to show; {Usual} unless said.");
        var forecasts = Inputs.Flag("--forecasts", "How good the forecasts were instead: each closed job forecast before it was counted. Takes some seconds.");
        return desk.Command("review", "Which resets and fixes resolved which symptoms, or how good the forecasts were.", [device, take, forecasts], session =>
        {
            if (session.Get(forecasts))
                return session.Show(Forecasts(desk, session), paper => ForecastText.Write(paper, Forecasts(desk, session)));
            var review = session.Bench.Review(session.Get(device) is { } typed ? Machine(session, typed) : null);
            return session.Show(review, paper => ReviewText.Write(paper, review, (int)Math.Clamp(session.Get(take) ?? Usual, 0, 10_000)));
        });
    }

    private static ForecastReview Forecasts(Desk desk, Session session) =>
        session.Bench.Forecasts(desk.Progress<ForecastProgress>(p => $"{p.Done} of {p.All} jobs forecast"));

    private static string Machine(Session session, string typed) =>
        session.Bench.Notes.Find<DeviceClass>(typed)?.Id ?? PartialIds.Note<Device>(session.Bench, "device", typed).Id;
}
