using Microsoft.Playwright;
using Triage.Service.Tests;
using Xunit;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Triage.Browser.Tests.Stories;

/// <summary>A phone that looks at the paper opens the job: the code is read off the picture that the browser draws.</summary>
public class PrintedCodeTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private const string Job = "2026-022";

    /// <summary>Paper is printed with more dots than a screen shows.</summary>
    private const int PaperSharp = 3;

    [Theory]
    [InlineData("sheet", ColorScheme.Light)]
    [InlineData("reassembly", ColorScheme.Light)]
    [InlineData("label", ColorScheme.Light)]
    [InlineData("label", ColorScheme.Dark)]
    public async Task The_code_on_paper_is_the_job_s_address(string paper, ColorScheme colours)
    {
        await using var phone = await Phone.Open(script: true, colours: colours, at: shared.Bench, sharp: PaperSharp);
        await phone.Go($"/jobs/{Job}/print/{paper}");
        await phone.Page.EmulateMediaAsync(new() { Media = Media.Print });
        var picture = await phone.Page.Locator("svg.code").ScreenshotAsync();
        Assert.Equal(new Uri(phone.Bench.Address, $"/jobs/{Job}").AbsoluteUri, await Read(phone.Page, picture));
    }

    /// <summary>The browser unpacks the PNG; the decoder sees grey values only.</summary>
    private static async Task<string?> Read(IPage page, byte[] png)
    {
        var grey = await page.EvaluateAsync<int[]>("""
            async png => {
              const bytes = Uint8Array.from(atob(png), c => c.charCodeAt(0));
              const image = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
              const canvas = new OffscreenCanvas(image.width, image.height), on = canvas.getContext("2d");
              on.drawImage(image, 0, 0);
              const all = on.getImageData(0, 0, image.width, image.height).data;
              return [image.width, image.height, ...Array.from({ length: all.length / 4 }, (_, i) => Math.round((all[4 * i] + all[4 * i + 1] + all[4 * i + 2]) / 3))];
            }
            """, Convert.ToBase64String(png));
        var light = new RGBLuminanceSource([.. grey[2..].Select(g => (byte)g)], grey[0], grey[1], RGBLuminanceSource.BitmapFormat.Gray8);
        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(light)))?.Text;
    }
}
