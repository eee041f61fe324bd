using System.CommandLine;
using Triage.Cli.Paper;
using Triage.Cli.Typed;
using Triage.Service;
using Triage.Service.Owner;
using Triage.Service.Phones;
using Triage.Workshop;

namespace Triage.Cli.Commands;

/// <summary><c>triage serve</c>: the bench in a browser of this machine, and on phones that were paired.</summary>
internal static class ServeCommand
{
    public static Command Of(Desk desk)
    {
        var port = Inputs.Number("--port", $"Port to listen on; {ServerOptions.UsualPort} unless said, 0 for any that is free.");
        var phone = new Option<bool>("--phone") { Description = "Lets phones on this network in too, over HTTPS, each paired once with a code." };
        var phonePort = Inputs.Number("--phone-port", $"Port on which phones come in; {PhoneOptions.UsualPort} unless said, 0 for any that is free.");
        var open = new Option<bool>("--open-to-this-machine") { Description = "Lets every user and program of this machine in, not only you." };
        return desk.Command("serve", "Serves the bench to your browser on this machine until Ctrl-C.", [port, open, phone, phonePort], async (typed, stop) =>
        {
            var options = new ServerOptions
            {
                Owner = typed.GetValue(open) ? null : Key(desk),
                Port = Port(typed.GetValue(port) ?? ServerOptions.UsualPort),
                Phone = typed.GetValue(phone) ? new() { Port = Port(typed.GetValue(phonePort) ?? PhoneOptions.UsualPort) } : null,
            };
            await using var live = LiveBench.Open(desk.Opening(Books.Of(typed.GetValue(desk.BookOption) ?? [])));
            await Serve(live, options, desk.Sheet(), typed.GetValue(desk.JsonOption), stop);
            return ExitCode.Ok;
        });
    }

    private static async Task Serve(LiveBench live, ServerOptions options, Sheet paper, bool json, CancellationToken stop)
    {
        try
        {
            await using var server = BenchServer.Build(live, options);
            var address = await BenchServer.StartAsync(server, options, stop);
            var phone = BenchServer.Invite(server);
            paper.Show(new { Address = address, Phone = phone is null ? null : new { phone.Address, phone.Fingerprint } }, p => Say(p, address, options.Owner is not null, phone), json);
            var ended = new TaskCompletionSource();
            await using (stop.Register(ended.SetResult))
                await ended.Task;
            await server.StopAsync(CancellationToken.None);
        }
        catch (CannotServeException e)
        {
            throw new RefusedException(new(RefusalKind.CannotWrite, e.Message, ""));
        }
    }

    private static void Say(Sheet paper, Uri address, bool owned, Invitation? phone)
    {
        paper.Raw($"The bench is at {address} until Ctrl-C.");
        if (owned)
            paper.Raw("The address lets one browser in, once. Another one: triage address");
        if (phone is null)
            return;
        if (paper.IsTerminal)
            paper.Raw(phone.InCharacters());
        paper.Raw($"For phones on this network it is at {phone.Address}");
        // a log is kept and read by others: the code is not for it
        if (paper.IsTerminal)
            paper.Raw(FormattableString.Invariant($"Code for one phone, until {phone.Until.ToLocalTime():HH:mm}: {phone.Code}"));
        paper.Raw($"The phone warns that it does not know this computer; the SHA-256 fingerprint it shows must be {phone.Fingerprint}");
        paper.Raw($"{(paper.IsTerminal ? "Another" : "A")} code, and shutting a phone out: {new Uri(address, "/phones")}");
    }

    private static OwnerKey Key(Desk desk)
    {
        try
        {
            return OwnerKey.Of(desk.Runtime);
        }
        catch (CannotServeException e)
        {
            throw new RefusedException(new(RefusalKind.CannotWrite, e.Message, ""));
        }
    }

    /// <exception cref="RefusedException">It is no port.</exception>
    public static int Port(double number) =>
        number is < 0 or > 65535 || number != Math.Floor(number) ? throw new RefusedException(CommandTexts.NoPort(number)) : (int)number;
}
