using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Triage.Service.Owner;
using Triage.Workshop;

namespace Triage.Service;

/// <summary>
/// Keys that prove a form came from this bench's pages. They lie aside in the book that is written to, readable by its owner only, so
/// that a form begun before the server was killed can still be sent; without such a folder they live as long as the process.
/// </summary>
internal static class FormKeys
{
    public static void AddFormKeys(this IServiceCollection services, LiveBench bench)
    {
        var keys = services.AddDataProtection().SetApplicationName("bench");
        if (bench.Aside is { } aside && Prepared(aside) is { } folder)
            keys.PersistKeysToFileSystem(folder);
        else
            services.Configure<KeyManagementOptions>(options => options.XmlRepository = new InMemory());
        // that the keys lie there unencrypted is meant: whoever reads them reads the notes too
        services.AddLogging(log => log.AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error));
    }

    /// <summary>The library's own ephemeral keys leave one in the user's home all the same.</summary>
    private sealed class InMemory : IXmlRepository
    {
        private readonly List<XElement> kept = [];

        public IReadOnlyCollection<XElement> GetAllElements()
        {
            lock (kept)
                return [.. kept];
        }

        public void StoreElement(XElement element, string friendlyName)
        {
            lock (kept)
                kept.Add(new(element));
        }
    }

    private static DirectoryInfo? Prepared(string aside)
    {
        try
        {
            return PrivateFolder.In(aside).Place;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
