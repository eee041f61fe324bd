using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Service;
using Triage.Workshop;
using Triage.Workshop.Steps;

namespace Triage.Cli.Commands;

/// <summary><c>triage serve</c>: the bench in a browser, on this machine only.</summary>
internal static class ServeCommand
{
    public static Command Of(Desk desk)
    {
        var port = Inputs.Number("--port", $"Port to listen on; {ServerOptions.UsualPort} unless said, 0 for any that is free.");
        return desk.Command("serve", "Serves the bench to the browser of this machine until Ctrl-C.", [port], async (typed, stop) =>
        {
            var number = typed.GetValue(port) ?? ServerOptions.UsualPort;
            if (number is < 0 or > 65535 || number != Math.Floor(number))
                throw new RefusedException(CommandTexts.NoPort(number));
            await using var live = LiveBench.Open(new() { Books = Books.Of(typed.GetValue(desk.BookOption) ?? []), Clock = desk.Clock });
            await Serve(live, new() { Port = (int)number }, desk.Sheet(), typed.GetValue(desk.JsonOption), stop);
            return ExitCode.Ok;
        });
    }

    private static async Task Serve(LiveBench live, ServerOptions options, Sheet paper, bool json, CancellationToken stop)
    {
        await using var server = BenchServer.Build(live, options);
        try
        {
            var address = await BenchServer.StartAsync(server, options, stop);
            paper.Show(new { Address = address }, p => p.Raw($"The bench is at {address} until Ctrl-C."), json);
        }
        catch (CannotServeException e)
        {
            throw new RefusedException(new(RefusalKind.CannotWrite, e.Message, ""));
        }

        var ended = new TaskCompletionSource();
        await using (stop.Register(ended.SetResult))
            await ended.Task;
        await server.StopAsync(CancellationToken.None);
    }
}
