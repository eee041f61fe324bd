using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary><c>triage review</c>: which fixes resolved which symptoms.</summary>
internal static class ReviewCommand
{
    private const int Usual = 25;

    public static Command Of(Desk desk)
    {
        var device = Inputs.OptionalText("--device", "Only this device or class.");
        var take = Inputs.Number("--take", $"How many rows to show; {Usual} unless said.");
        return desk.Command("review", "Which resets and fixes resolved which symptoms.", [device, take], session =>
        {
            var review = session.Bench.Review(session.Get(device) is { } typed ? Machine(session, typed) : null);
            return session.Show(review, paper => ReviewText.Write(paper, review, (int)Math.Clamp(session.Get(take) ?? Usual, 0, 10_000)));
        });
    }

    private static string Machine(Session session, string typed) =>
        session.Bench.Notes.Find<DeviceClass>(typed)?.Id ?? PartialIds.Note<Device>(session.Bench, "device", typed).Id;
}
