namespace Triage.Service.Http;

/// <summary>Where things are shown.</summary>
internal static class Addresses
{
    public static string Job(string id) => $"/jobs/{Uri.EscapeDataString(id)}";

    /// <param name="page">Below the job's own address; empty for its main page.</param>
    public static string Job(string id, string page) => page.Length == 0 ? Job(id) : $"{Job(id)}/{page}";

    public static string Photo(string job, string path) => $"/photos/{Uri.EscapeDataString(job)}/{Uri.EscapeDataString(path.Split('/')[^1])}";

    public static string NoteText(string note) => $"/notes/{Uri.EscapeDataString(note)}/text";

    public static string History(string note) => $"/notes/{Uri.EscapeDataString(note)}/history";

    public static string Version(string note, string version) => $"{History(note)}/{Uri.EscapeDataString(version)}";

    public static string Drawings(string device) => $"/notes/{Uri.EscapeDataString(device)}/drawings";

    public static string Drawing(string device, int number) => FormattableString.Invariant($"{Drawings(device)}/{number}");

    public static string Part(string device, string designator) => $"/notes/{Uri.EscapeDataString(device)}/parts/{Uri.EscapeDataString(designator)}";
}
