using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Service;
using Triage.Service.Owner;

namespace Triage.Cli.Commands;

/// <summary><c>triage address</c>: lets another browser, or a program, of the owner into the served bench.</summary>
internal static class AddressCommand
{
    public static Command Of(Desk desk)
    {
        var port = Inputs.Number("--port", $"Port on which the bench is served; {ServerOptions.UsualPort} unless said.");
        return desk.Command("address", "Prints an address that lets one browser of yours into the served bench, once, and where programs find the key.", [port], (typed, _) =>
        {
            if (desk.Runtime is not { } folder || OwnerKey.Find(folder) is not { } key)
                throw new RefusedException(CommandTexts.NoOwnerKey);
            var address = key.Address(ServeCommand.Port(typed.GetValue(port) ?? ServerOptions.UsualPort), desk.Clock.GetUtcNow());
            var file = OwnerKey.FileIn(folder);
            return Task.FromResult(desk.Sheet().Show(new { Address = address, KeyFile = file }, paper =>
            {
                paper.Raw($"{address}");
                paper.Raw($"Programs send “Authorization: Bearer” with what stands in {file}");
            }, typed.GetValue(desk.JsonOption)));
        });
    }
}
