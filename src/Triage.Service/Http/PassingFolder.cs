using Microsoft.AspNetCore.Http;

namespace Triage.Service.Http;

/// <summary>A temporary folder for one answer: gone once that is sent.</summary>
internal static class PassingFolder
{
    /// <returns>Path of a file in it that is not there yet.</returns>
    public static string For(HttpContext http, string file)
    {
        var folder = Directory.CreateTempSubdirectory("book-");
        http.Response.OnCompleted(() =>
        {
            folder.Delete(recursive: true);
            return Task.CompletedTask;
        });
        return Path.Combine(folder.FullName, file);
    }
}
