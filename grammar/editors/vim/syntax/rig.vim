" Written by grammar/editors/derive.py from grammar/rig.lark.
if exists("b:current_syntax")
  finish
endif
syntax case match
syntax iskeyword @,48-57,-
syntax sync minlines=1
syntax match rigName /\v<[a-z][a-z0-9]*%(-[a-z0-9]+)*>/
syntax match rigMark /\v<[A-Z][A-Z0-9]*[a-z]?>/
syntax match rigUnit /\v%(x[ \t]*[0-9+-]|%(reverse-protected|double-insulated|centre-negative|centre-positive|non-inverting|battery-door|capacitance|mains-strip|reverse-log|sensitivity|switch-mode|transformer|unregulated|base-label|characters|conductors|deliberate|efficiency|expression|field-note|headphones|inductance|instrument|insulating|microphone|resistance|ring-wiper|all-units|always-on|clearance|conductor|connector|converted|crossings|crossover|impedance|insulated|mini-jack|momentary|reversing|symmetric|thickness|tip-wiper|unpowered|analogue|as-built|balanced|brackets|buffered|bypassed|centring|dry-kill|feedback|firmware|inverted|isolated|keep-out|keyboard|language|latching|listener|measured|mini-trs|mounting|negative|parallel|plug-top|polarity|positive|programs|reversed|revision|scenario|selector|soldered|splitter|straight|stranded|textured|together|unwanted|wireless|accepts|airline|allowed|assumed|balance|battery|because|beneath|bridged|captive|carries|ceiling|channel|checked|contact|control|country|digital|doubles|earthed|expects|follows|gigging|insured|inverts|latches|latency|leaflet|pairing|passive|phantom|premade|program|removed|reserve|retired|screwed|sockets|speaker|stamped|through|touches|touring|treadle|unknown|version|voltage|winding|accept|active|barrel|before|behind|beside|bolted|bonded|buffer|bypass|change|client|closed|colour|common|cut-in|cycles|design|factor|fitted|folded|frozen|ground|insert|inside|itself|jacket|leaves|lifted|linear|lowest|marker|master|middle|oclock|onward|origin|others|outlet|output|passes|pickup|preset|raised|return|reverb|screen|screws|serial|series|shared|shield|silent|source|spares|stands|starts|stereo|studio|supply|switch|tinned|trails|tuning|turned|volume|wanted|within|worked|alone|angle|audio|bears|blend|board|cable|chain|class|clear|clock|delay|drawn|draws|empty|every|faces|facts|floor|front|gives|holds|inlet|input|jacks|knobs|label|lasts|leads|level|limit|lines|loops|lower|mains|mates|metal|minus|mutes|needs|never|order|other|outer|owner|panel|place|plain|plugs|poles|power|price|reach|reads|relay|right|rules|sends|share|shows|slack|solid|spare|stock|strip|tails|takes|tempo|tests|total|track|under|until|vents|wants|weigh|while|amps|away|band|bare|base|bend|body|both|case|core|deck|desk|done|drop|edge|ends|feet|fits|flat|foot|free|from|fuse|gain|gaps|hand|heel|high|hole|home|into|jack|join|knob|lane|lead|left|lift|like|line|load|loop|made|mass|midi|mute|near|none|note|only|open|opto|over|pair|path|peak|plug|pull|rail|rate|rear|ring|roll|seal|send|show|side|size|snap|song|stay|stop|swap|tall|tape|test|thru|tier|tone|trim|true|type|unit|vent|warm|wide|with|all|amp|and|cut|din|dry|fly|for|gap|lid|log|max|may|off|out|rig|row|set|tie|tip|trs|usb|use|was|wet|xlr|ac|at|by|dc|in|of|on|or|to|ts|up|a|b)>)@![A-Za-zµμΩ°%\/]+[23]?/ contained
syntax match rigNumber /\v[+-]?\d+%(\.\d+)?/ nextgroup=rigUnit skipwhite
syntax match rigDate /\v\d{4}-\d{2}-\d{2}/
syntax match rigSign /\v-\>|\=\>|\.\.|\+-|\+\/-|±|x\ze[ \t]*[0-9+-]/
syntax keyword rigValue a ac airline allowed always-on analogue assumed audio
syntax keyword rigValue b balance balanced base-label battery-door bears behind beneath
syntax keyword rigValue beside bolted bonded both brackets buffer buffered by
syntax keyword rigValue centre-negative centre-positive centring closed contact converted crossings crossover
syntax keyword rigValue cut dc delay deliberate design digital din double-insulated
syntax keyword rigValue doubles dry-kill earthed ends facts flat fly folded
syntax keyword rigValue foot front gaps gigging gives hand high home
syntax keyword rigValue in insert insulated inverted inverts itself keyboard latches
syntax keyword rigValue latching leaflet left lifted line linear lines load
syntax keyword rigValue log made measured microphone middle mini-jack mini-trs momentary
syntax keyword rigValue mutes negative never non-inverting none only onward open
syntax keyword rigValue opto other out over pairing parallel passes passive
syntax keyword rigValue pickup plugs positive rear relay removed reverb reverse-log
syntax keyword rigValue reverse-protected reversed reversing right ring ring-wiper rules screwed
syntax keyword rigValue screws sends series shared shield silent snap solid
syntax keyword rigValue speaker splitter stamped stay stereo stock stop straight
syntax keyword rigValue stranded studio switch-mode tails textured thru tinned tip
syntax keyword rigValue tip-wiper total touring trails trim trs true ts
syntax keyword rigValue under unknown unregulated unwanted vent voltage wanted wants
syntax keyword rigValue winding wireless worked xlr
syntax keyword rigWord accept accepts active all amps angle at band
syntax keyword rigWord bare barrel base battery bend body bypass capacitance
syntax keyword rigWord captive carries ceiling chain change checked class clearance
syntax keyword rigWord client clock colour common conductor conductors connector core
syntax keyword rigWord country cut-in done drawn draws drop dry efficiency
syntax keyword rigWord every expression feedback feet field-note firmware fits fitted
syntax keyword rigWord floor follows frozen fuse gain ground headphones heel
syntax keyword rigWord holds hole impedance inductance inlet input inside insulating
syntax keyword rigWord insured isolated jack join keep-out knob label lane
syntax keyword rigWord language lasts latency lead leaves level lid lift
syntax keyword rigWord limit loop loops lowest mains marker mass master
syntax keyword rigWord mates minus mute needs note off on order
syntax keyword rigWord origin others outer outlet output owner pair path
syntax keyword rigWord phantom plain plug-top polarity poles premade price program
syntax keyword rigWord pull rail rate reserve resistance retired revision roll
syntax keyword rigWord selector serial set show size slack sockets soldered
syntax keyword rigWord spare stands starts swap switch takes tall tempo
syntax keyword rigWord test thickness through tie tier to tone track
syntax keyword rigWord transformer treadle tuning turned type unpowered usb use
syntax keyword rigWord vents version volume warm was weigh wet wide
syntax keyword rigWord alone and away because before board bridged bypassed
syntax keyword rigWord channel characters clear cycles edge empty expects faces
syntax keyword rigWord factor for free from gap into jacket jacks
syntax keyword rigWord knobs like lower max may metal near oclock
syntax keyword rigWord of or peak programs raised reach reads return
syntax keyword rigWord row screen seal send sensitivity share shows side
syntax keyword rigWord symmetric tape together touches until up while with
syntax keyword rigWord within
syntax keyword rigBlock all-units amp as-built blend cable case control deck
syntax keyword rigBlock desk instrument leads listener mains-strip midi mounting panel
syntax keyword rigBlock place plug power preset rig scenario song source
syntax keyword rigBlock spares strip supply tests unit
syntax match rigJack /\v\.%([a-z][a-z0-9]*%(-[a-z0-9]+)*)>/
syntax match rigHead /\v%(^|\{)@1<=\s*%(mains-strip|instrument|impedance|feedback|listener|scenario|selector|phantom|accept|common|master|outlet|output|source|supply|blend|cable|holds|inlet|input|level|order|panel|strip|amps|case|deck|desk|jack|join|lift|mute|pair|path|plug|swap|tier|unit|amp|off|rig|set|usb|was|on)>/ contains=rigWord nextgroup=rigNamed skipwhite
syntax match rigNamed /\v<[a-z][a-z0-9]*%(-[a-z0-9]+)*>/ contained
syntax region rigText start=/"/ skip=/\\./ end=/"/ oneline
syntax match rigComment /#.*/ contains=@Spell
highlight default link rigName Identifier
highlight default link rigNamed Identifier
highlight default link rigHead Statement
highlight default link rigJack Special
highlight default link rigMark Label
highlight default link rigUnit Type
highlight default link rigNumber Number
highlight default link rigDate Number
highlight default link rigSign Operator
highlight default link rigValue Constant
highlight default link rigWord Statement
highlight default link rigBlock Structure
highlight default link rigText String
highlight default link rigComment Comment
let b:current_syntax = "rig"
