package job
import ("testing";"fmt";"time";"strings")
func TestZZ(t *testing.T){
 rep:=func(s string) string { return strings.Repeat(s, (1<<20-100)/len(s)) }
 nums:=func(f string) string { var b strings.Builder; for i:=0; b.Len()<1<<20-200; i++ { fmt.Fprintf(&b,f,i) }; return b.String() }
 for n,src:=range map[string]string{
  "unknown keys": nums("a%d=1\n"), "screens": "title=\"a\"\n[[location]]\n"+rep("[[location.screen]]\nmesh=1\n"), "one line inline": "a={"+nums("b%d=1,")+"c=1}", "locations": rep("[[location]]\n"),
  "dotted 8": nums("a.b.c.d.e.f.g.h%d=1\n"), "long array": "a=["+rep("1,")+"]", "comments": rep("# \n"), "spaces":rep(" "), "quotes":rep("\""), "apos": rep("'"), "brackets":"a="+rep("["), "braces":"a="+rep("{"), "ae":"a="+rep("{a="),"dots":rep("a."),
  "long key header":"["+strings.Repeat("a",199)+"]\n"+nums("k%d=1\n"), "long dotted header": "[a.b.c.d.e.f.g."+strings.Repeat("a",180)+"]\n"+nums("a.b.c.d.e.f.g.k%d=1\n"), "escapes": "a=\""+rep("\\u00e9")+"\"", "mlesc":"a=\"\"\""+rep("\\\n")+"\"\"\"", "mlesc2":"a=\"\"\""+rep("\\\n x")+"\"\"\"","tables": nums("[t%d]\n"), "errors deep": "title=\"x\"\n[[location]]\n[[location.screen]]\n"+nums("k%d=1\n"),"utf":"a=\""+rep("é")+"\"", "arr inline": "location=["+rep("{screen=[{}]},")+"]", "floats":"a=["+rep("1.5e3,")+"]",
  "nest16": nums("k%d=[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]\n"), "blades": rep("[[ink]]\nname=\"a\"\nlike=\"b\"\n"), "inlinetables": nums("x%d={a.b.c.d.e.f.g.h=1}\n"),"deepinline": "x={a.b.c.d.e.f.g.h={a.b.c.d.e.f.g.h={a.b.c.d.e.f.g.h={a.b.c.d.e.f.g.h={a.b.c.d.e.f.g.h={"+nums("a%d=1,")+"b=1}}}}}}",
 }{
  s:=time.Now(); _,e:=DecodeJob("j.toml",[]byte(src)); d:=time.Since(s)
  s=time.Now(); _,e2:=DecodeShop("j.toml",[]byte(src)); d2:=time.Since(s)
  m:=""; if len(e)>0 { m=e[0].Error() }; if len(m)>90 { m=m[:90] }
  fmt.Println(n,len(src),d.Round(time.Millisecond),d2.Round(time.Millisecond),len(e),len(e2),m)
 }
}
