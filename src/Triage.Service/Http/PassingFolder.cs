using Microsoft.AspNetCore.Http;

namespace Triage.Service.Http;

/// <summary>
/// A temporary folder that is gone when it is no longer needed, or at the next one, or the next start, when its process was killed: the system lets go
/// of the file that marks it as in use.
/// </summary>
internal sealed class PassingFolder : IDisposable
{
    private const string Prefix = "bench-passing-", Mark = ".in-use";

    private readonly FileStream mark;

    private PassingFolder(string place) =>
        (Place, mark) = (place, new(Path.Combine(place, Mark), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None));

    public string Place { get; }

    /// <summary>One for an answer: gone once that is sent.</summary>
    /// <returns>Path of a file in it that is not there yet.</returns>
    public static string For(HttpContext http, string file)
    {
        var folder = Make();
        http.Response.OnCompleted(() =>
        {
            folder.Dispose();
            return Task.CompletedTask;
        });
        return Path.Combine(folder.Place, file);
    }

    public static PassingFolder Make()
    {
        Sweep();
        return new(Directory.CreateTempSubdirectory(Prefix).FullName);
    }

    /// <summary>Takes away what killed processes left. What is in use, or another user's, stays.</summary>
    public static void Sweep()
    {
        foreach (var left in Directory.EnumerateDirectories(Path.GetTempPath(), $"{Prefix}*").Where(IsLeft))
            Remove(left);
    }

    public void Dispose()
    {
        mark.Dispose();
        Remove(Place);
    }

    /// <summary>One without a mark was made this moment, or killed in it: it holds nothing.</summary>
    private static bool IsLeft(string folder)
    {
        try
        {
            using var held = new FileStream(Path.Combine(folder, Mark), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static void Remove(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // the next start tries again
        }
    }
}
