use fenderbench::{archive, assess};
fn main() {
    for path in std::env::args().skip(1) {
        let text = std::fs::read_to_string(&path).unwrap();
        let session = archive::read(&text).unwrap().session;
        let a = assess::assess(&session);
        let t = std::time::Instant::now();
        let advice = assess::advise(&session, &a);
        println!("=== {path} {:?}", t.elapsed());
        let p = &advice.plan;
        println!("way {:#?}", p.way);
        println!("hope {:#?}", p.hope);
        println!(
            "basis {:?} next {:?}",
            p.basis,
            p.next.as_ref().map(|n| n.question)
        );
        println!("runner {:?}", p.runner_up);
        for j in &p.parts {
            println!("{j:?}");
        }
        println!("troubles {:?}", p.troubles);
        println!("over {:?}", p.oversizes);
        println!("under {:?}", p.undersizes);
    }
}
