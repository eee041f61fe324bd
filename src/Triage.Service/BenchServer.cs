using System.Net.Sockets;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;
using Triage.Service.Http;
using Triage.Service.Jobs;
using Triage.Service.Owner;
using Triage.Service.Phones;
using Triage.Service.Shown;
using Triage.Workshop;

namespace Triage.Service;

/// <summary>The bench over HTTP: pages for people, JSON for programs. Nothing is read from the surroundings, everything is said in the options.</summary>
public static class BenchServer
{
    /// <summary>More than any form or body needs; longer texts are refused in words before that.</summary>
    private const long MostBytes = 2_000_000;

    /// <exception cref="CannotServeException">The address is not this machine's own, or phones cannot be paired.</exception>
    public static WebApplication Build(LiveBench bench, ServerOptions server)
    {
        var address = Loopback.Address(server.Address);
        PassingFolder.Sweep();
        var builder = WebApplication.CreateEmptyBuilder(new() { ApplicationName = typeof(BenchServer).Assembly.GetName().Name });
        var door = server.Phone is null ? null : PhoneDoor.Of(bench);
        builder.WebHost.UseKestrelCore().UseKestrelHttpsConfiguration().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostBytes;
            kestrel.Listen(address, server.Port, here => here.Use(Doorkeeper.Mark));
            if (door is not null)
                kestrel.ListenAnyIP(server.Phone!.Port, network => network.UseHttps(door.Certificate));
        });
        (server.Logging ?? ToConsole)(builder.Logging);
        AddServices(builder.Services, bench);
        AddPairing(builder.Services, bench, door);
        if (server.Owner is { } owner)
            builder.Services.AddSingleton(new OwnerDoor(owner, bench.Clock));
        var app = builder.Build();
        if (door is not null)
            app.Services.GetRequiredService<PairedPhones>();
        app.UseExceptionHandler(new ExceptionHandlerOptions { ExceptionHandler = Faults.Handle, CreateScopeForErrors = true, SuppressDiagnosticsCallback = met => Faults.IsClients(met.Exception) });
        app.UseStatusCodePages(Faults.Say);
        app.Use(BrowserRules.Set);
        app.Use(new Doorkeeper(app.Services.GetRequiredService<PairedPhones>, app.Services.GetService<OwnerDoor>()).Admit);
        app.Use(OwnOrigin.Check);
        app.Use(KnownCharset.Check);
        app.UseResponseCompression();
        app.UseRouting();
        app.MapOpenApi();
        app.MapApi();
        app.MapPages();
        app.MapWayIn();
        return app;
    }

    /// <summary>Starts listening.</summary>
    /// <returns>The address to open; where the owner is known, it lets one browser in, once.</returns>
    /// <exception cref="CannotServeException">The port is taken, or may not be used.</exception>
    public static async Task<Uri> StartAsync(WebApplication app, ServerOptions server, CancellationToken stop = default)
    {
        try
        {
            await app.StartAsync(stop);
        }
        catch (IOException e) when (e.InnerException is AddressInUseException)
        {
            throw new CannotServeException(server.Phone is { } phone && e.Message.Contains($":{phone.Port}:", StringComparison.Ordinal)
                ? $"Port {phone.Port}, on which phones come in, is in use. Choose another with --phone-port, or --phone-port 0 for any free one."
                : $"Port {server.Port} is in use: perhaps the bench is served already, open http://{server.Address}:{server.Port}/. Otherwise choose another with --port, or --port 0 for any free one.", e);
        }
        catch (SocketException e)
        {
            throw new CannotServeException($"Port {server.Port} cannot be used: {e.Message}. Choose another with --port, from 1024 on.", e);
        }

        if (app.Services.GetService<PhoneDoor>() is { } door)
            door.OpenedAt(new Uri(app.Urls.Last().Replace("[::]", "localhost", StringComparison.Ordinal)).Port);
        return new(new Uri(app.Urls.First()), app.Services.GetService<OwnerDoor>()?.Address() ?? "/");
    }

    /// <summary>A code with which one phone may come in; null when phones are not let in. The server must have started.</summary>
    public static Invitation? Invite(WebApplication app) => app.Services.GetService<PhoneDoor>()?.Invite();

    private static void AddPairing(IServiceCollection services, LiveBench bench, PhoneDoor? door)
    {
        services.AddSingleton(_ => PairedPhones.Of(PhoneDoor.Private(bench)));
        if (door is not null)
            services.AddSingleton(_ => door);
    }

    private static void AddServices(IServiceCollection services, LiveBench bench)
    {
        services.AddSingleton(bench);
        services.AddSingleton<StepRecorder>();
        services.AddSingleton<KnownAnswers>();
        services.AddRoutingCore();
        services.AddProblemDetails();
        services.AddRazorComponents();
        services.AddFormKeys(bench);
        // not over HTTPS: compressed secrets can be guessed there (the BREACH attack, Gluck, Harris & Prado 2013)
        services.AddResponseCompression(pages => pages.EnableForHttps = false);
        services.AddAntiforgery(forms => forms.Cookie.Name = "bench-forms");
        services.Configure<RouteHandlerOptions>(routes => routes.ThrowOnBadRequest = true);
        services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.Converters.Add(new JsonStringEnumConverter(System.Text.Json.JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
            json.SerializerOptions.RespectNullableAnnotations = true;
            json.SerializerOptions.RespectRequiredConstructorParameters = true;
            json.SerializerOptions.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
        });
        services.AddOpenApi(api => api.AddDocumentTransformer((document, _, _) =>
        {
            document.Info.Title = "Bench";
            document.Info.Version = "1";
            document.Info.Description = "A machine's complaint in, the next best step out; from taking in to follow-up. Every error is a problem document that says what is wrong and what to do instead. On a bench that knows its owner every call needs “Authorization: Bearer” with the owner's key.";
            document.Servers = [];
            return Task.CompletedTask;
        }));
    }

    /// <summary>A start that fails is said in the exception's own words; the host's would add a stack trace.</summary>
    private static void ToConsole(ILoggingBuilder log) =>
        log.AddConsole(console => console.FormatterName = LogLines.Format).AddConsoleFormatter<LogLines, ConsoleFormatterOptions>().SetMinimumLevel(LogLevel.Warning)
            .AddFilter("Triage", LogLevel.Information).AddFilter("Microsoft.Extensions.Hosting", LogLevel.None)
            // a form with a stale or forged token is answered in words; its stack trace helps nobody
            .AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.None);
}
