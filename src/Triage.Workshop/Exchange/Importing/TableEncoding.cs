using System.Text;

namespace Triage.Workshop.Exchange.Importing;

internal static class TableEncoding
{
    /// <summary>The encoding of this name, the old one-byte ones included; null when there is none.</summary>
    public static Encoding? Find(string name)
    {
        try
        {
            return CodePagesEncodingProvider.Instance.GetEncoding(name) ?? Encoding.GetEncoding(name);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
