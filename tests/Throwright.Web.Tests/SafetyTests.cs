using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Throwright.Files;
using Throwright.Web.Editing;
using Throwright.Web.Host;

namespace Throwright.Web.Tests;

/// <summary>The page answers this computer and its own page, and nobody else.</summary>
public sealed class SafetyTests : IAsyncLifetime
{
    private readonly string root = Directory.CreateTempSubdirectory("throwright-").FullName;
    private readonly HttpClient client = new(new HttpClientHandler { AllowAutoRedirect = false });
    private AircraftFolder folder = null!;
    private WebApplication app = null!;
    private Uri address = null!;

    public async ValueTask InitializeAsync()
    {
        await File.WriteAllTextAsync(Path.Combine(root, "demo.throwright.json"), AircraftFolder.DemoText());
        folder = new(root);
        app = WebApp.Build(folder, 0);
        await app.StartAsync();
        address = new(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
    }

    public async ValueTask DisposeAsync()
    {
        await app.StopAsync();
        await app.DisposeAsync();
        folder.Dispose();
        client.Dispose();
        Directory.Delete(root, recursive: true);
    }

    [Fact]
    public async Task Listens_OnLoopbackOnly()
    {
        Assert.Equal("127.0.0.1", address.Host);
        var others = (await Dns.GetHostAddressesAsync(Dns.GetHostName(), TestContext.Current.CancellationToken)).Where(a => !IPAddress.IsLoopback(a) && a.AddressFamily == AddressFamily.InterNetwork);
        foreach (var other in others)
        {
            using var socket = new TcpClient();
            await Assert.ThrowsAnyAsync<SocketException>(() => socket.ConnectAsync(other, address.Port, TestContext.Current.CancellationToken).AsTask());
        }
    }

    [Theory]
    [InlineData("127.0.0.1", HttpStatusCode.OK)]
    [InlineData("localhost", HttpStatusCode.OK)]
    [InlineData("LOCALHOST", HttpStatusCode.OK)]
    [InlineData("rebound.example", HttpStatusCode.Forbidden)]
    [InlineData("127.0.0.1.rebound.example", HttpStatusCode.Forbidden)]
    [InlineData("0.0.0.0", HttpStatusCode.Forbidden)]
    public async Task Host_OfAnotherName_IsRefused(string host, HttpStatusCode expected)
    {
        Assert.Equal(expected, (await Ask(HttpMethod.Get, "/", m => m.Headers.Host = $"{host}:{address.Port}")).StatusCode);
        Assert.Equal(expected, (await Ask(HttpMethod.Get, "/a/demo/save", m => m.Headers.Host = $"{host}:{address.Port}")).StatusCode);
    }

    [Theory]
    [InlineData("http://elsewhere.example")]
    [InlineData("null")]
    [InlineData("http://127.0.0.1:1")]
    public async Task Origin_OfAnotherPage_IsRefused(string origin)
    {
        Assert.Equal(HttpStatusCode.Forbidden, (await Ask(HttpMethod.Get, "/a/demo/save", m => m.Headers.Add("Origin", origin))).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await Ask(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1", m => m.Headers.Add("Origin", origin))).StatusCode);
    }

    [Fact]
    public async Task Post_WithoutASender_IsRefused() =>
        Assert.Equal(HttpStatusCode.Forbidden, (await Ask(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1")).StatusCode);

    [Theory]
    [InlineData("http://elsewhere.example", false)]
    [InlineData(null, false)]
    [InlineData("own", true)]
    public async Task Socket_OpensForOurOwnPageOnly(string? origin, bool opens)
    {
        using var socket = new System.Net.WebSockets.ClientWebSocket();
        if (origin is not null)
            socket.Options.SetRequestHeader("Origin", origin == "own" ? address.GetLeftPart(UriPartial.Authority) : origin);
        var open = socket.ConnectAsync(new($"ws://127.0.0.1:{address.Port}/_blazor?id=none"), TestContext.Current.CancellationToken);
        if (opens)
        {
            // Our own page gets as far as the program, which does not know this conversation.
            var fault = await Record.ExceptionAsync(() => open);
            Assert.True(fault is null || fault.Message.Contains("404", StringComparison.Ordinal), fault?.Message);
        }
        else
        {
            Assert.Contains("403", (await Assert.ThrowsAsync<System.Net.WebSockets.WebSocketException>(() => open)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Picture_AskedForByAnotherSite_IsRefused()
    {
        var path = "/a/demo/picture/cowl-flap/sheet.svg";
        Assert.Equal(HttpStatusCode.OK, (await Ask(HttpMethod.Get, path)).StatusCode);
        var refused = await Ask(HttpMethod.Get, path, m =>
        {
            m.Headers.Add("Sec-Fetch-Site", "cross-site");
            m.Headers.Add("Sec-Fetch-Mode", "no-cors");
        });
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        // A person may follow a link from elsewhere; a frame or picture of elsewhere may not show it.
        var followed = await Ask(HttpMethod.Get, "/a/demo", m =>
        {
            m.Headers.Add("Sec-Fetch-Site", "cross-site");
            m.Headers.Add("Sec-Fetch-Mode", "navigate");
        });
        Assert.Equal(HttpStatusCode.OK, followed.StatusCode);
        Assert.Equal("DENY", Assert.Single(followed.Headers.GetValues("X-Frame-Options")));
        Assert.Equal("same-origin", Assert.Single(followed.Headers.GetValues("Cross-Origin-Resource-Policy")));
    }

    [Fact]
    public async Task EveryAnswer_CarriesThePolicy_AndNoScriptStandsInThePage()
    {
        foreach (var path in (string[])["/", "/a/demo", "/a/demo/save", "/app/page.js", "/nothing-here"])
        {
            var answer = await Ask(HttpMethod.Get, path);
            var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
            var rules = policy.Split(';', StringSplitOptions.TrimEntries).ToDictionary(r => r.Split(' ')[0], r => string.Join(' ', r.Split(' ')[1..]));
            // Each by itself: one that is wider than this lets something in.
            var own = $"127.0.0.1:{address.Port}";
            Assert.Equal(
                new Dictionary<string, string>
                {
                    ["default-src"] = "'none'",
                    ["script-src"] = "'self'",
                    ["style-src"] = "'self'",
                    ["img-src"] = "'self' data: blob:",
                    ["font-src"] = "'self'",
                    ["connect-src"] = $"'self' ws://{own}",
                    ["form-action"] = "'self'",
                    ["base-uri"] = "'self'",
                    ["frame-ancestors"] = "'none'",
                },
                rules);
            Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        }

        var page = await (await Ask(HttpMethod.Get, "/")).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        foreach (var script in page.Split("<script")[1..])
            Assert.Contains("></script>", script[..(script.IndexOf('>', StringComparison.Ordinal) + 10)], StringComparison.Ordinal);
        Assert.DoesNotContain("<style", page, StringComparison.Ordinal);
        Assert.DoesNotContain(" style=", page, StringComparison.Ordinal);
        Assert.DoesNotContain("javascript:", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("<[a-z][^>]* on[a-z]+=", page);
    }

    [Theory]
    [InlineData("/a/demo/rig/cowl-flap.html")]
    [InlineData("/a/demo/picture/cowl-flap/sheet.svg")]
    [InlineData("/a/demo/save")]
    [InlineData("/a/demo/rig/cowl-flap.pdf")]
    public async Task WhatAFileSays_IsHandedOutAsADownload_NeverShownFromThisAddress(string path)
    {
        // A rigging page carries a script of its own; a text of the file could carry another. Neither may run as part of this page.
        var answer = await Ask(HttpMethod.Get, path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition?.DispositionType);
    }

    [Fact]
    public async Task Upload_WithoutItsToken_IsRefused_AndNothingIsWritten()
    {
        var answer = await Upload(new MultipartFormDataContent { { new StringContent("{}"), "file", "other.throwright.json" } });
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(["demo.throwright.json"], Written());
    }

    [Fact]
    public async Task Upload_LargerThanAnAircraftFile_IsRefused()
    {
        try
        {
            var answer = await Upload(new MultipartFormDataContent { { new ByteArrayContent(new byte[AircraftFile.MostBytes + 200_000]), "file", "other.throwright.json" } });
            Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        }
        catch (HttpRequestException)
        {
            // Refused while it was still being sent: the way it ends depends on how much was under way.
        }

        Assert.Equal(["demo.throwright.json"], Written());
    }

    [Fact]
    public async Task Upload_ThatDoesNotSayHowLongItIs_IsRefused()
    {
        var answer = await Ask(HttpMethod.Post, "/upload", m =>
        {
            m.Content = new MultipartFormDataContent { { new StringContent("{}"), "file", "other.throwright.json" } };
            m.Headers.Add("Origin", address.GetLeftPart(UriPartial.Authority));
            m.Headers.TransferEncodingChunked = true;
        });
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Equal(["demo.throwright.json"], Written());
    }

    [Theory]
    [InlineData("../other")]
    [InlineData("..\\other")]
    [InlineData("/tmp/other")]
    [InlineData(".other")]
    [InlineData("a:b")]
    public void Create_UnderANameThatLeadsElsewhere_WritesNothing(string name)
    {
        Assert.Null(folder.Create(name, AircraftFolder.DemoText(), out var problem));
        Assert.NotEmpty(problem);
        Assert.Equal(["demo.throwright.json"], Written());
        Assert.False(File.Exists(Path.Combine(Path.GetDirectoryName(root)!, "other.throwright.json")));
    }

    [Fact]
    public void Mesh_OutsideTheFolder_IsNotRead()
    {
        var outside = Directory.CreateTempSubdirectory("throwright-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(outside, "secret.stl"), "solid secret\nendsolid");
            var body = $$"""{ "id": "wall", "label": "wall", "shapes": [{ "mesh": { "file": "../{{Path.GetFileName(outside)}}/secret.stl", "unit": "mm" } }] }""";
            var text = AircraftFolder.DemoText();
            var at = text.IndexOf("\"bodies\": [", StringComparison.Ordinal) + "\"bodies\": [".Length;
            File.WriteAllText(Path.Combine(root, "meshed.throwright.json"), text[..at] + body + "," + text[at..]);
            var session = folder.Open("meshed")!;
            Assert.Empty(session.File.Meshes);
            Assert.Contains(session.File.Problems, p => p.JsonPath.Contains("mesh", StringComparison.Ordinal));
            Assert.DoesNotContain(session.File.Problems, p => p.Found.Contains("triangle", StringComparison.Ordinal));
        }
        finally
        {
            Directory.Delete(outside, recursive: true);
        }
    }

    [Theory]
    [InlineData("..%2F..%2Fetc%2Fpasswd")]
    [InlineData("..%5Cother")]
    [InlineData(".hidden")]
    [InlineData("nothing")]
    public async Task File_OutsideTheFolder_IsNotFound(string name) =>
        Assert.Equal(HttpStatusCode.NotFound, (await Ask(HttpMethod.Get, $"/a/{name}/save")).StatusCode);

    [Theory]
    [InlineData("../other")]
    [InlineData("a/b")]
    [InlineData("C:\\other")]
    [InlineData("")]
    [InlineData(".")]
    [InlineData("..")]
    [InlineData("a\0b")]
    public void Name_ThatLeadsElsewhere_HasNoPath(string name) => Assert.Null(folder.PathOf(name));

    [Fact]
    public void Link_OutOfTheFolder_IsNotFollowed()
    {
        var outside = Directory.CreateTempSubdirectory("throwright-").FullName;
        try
        {
            var target = Path.Combine(outside, "secret.throwright.json");
            File.WriteAllText(target, AircraftFolder.DemoText());
            File.CreateSymbolicLink(Path.Combine(root, "link.throwright.json"), target);
            Assert.Null(folder.PathOf("link"));
            Assert.Null(folder.Open("link"));
            Assert.DoesNotContain("link", folder.Names());
        }
        finally
        {
            Directory.Delete(outside, recursive: true);
        }
    }

    private string[] Written() => [.. Directory.EnumerateFiles(root).Select(p => Path.GetFileName(p)).Where(n => !n.EndsWith(".journal", StringComparison.Ordinal))];

    private Task<HttpResponseMessage> Upload(HttpContent content) => Ask(HttpMethod.Post, "/upload", m =>
    {
        m.Content = content;
        m.Headers.Add("Origin", address.GetLeftPart(UriPartial.Authority));
    });

    private Task<HttpResponseMessage> Ask(HttpMethod method, string path, Action<HttpRequestMessage>? with = null)
    {
        var message = new HttpRequestMessage(method, new Uri(address, path));
        with?.Invoke(message);
        return client.SendAsync(message, TestContext.Current.CancellationToken);
    }
}
